import type { KeyName } from '@reedplate/pitch';
import type { HoleReeds } from './harp.js';

/** A reed layout, before it has a key: what is common to the harps of one model in all keys. */
export interface Tuning {
  /**
   * Lower-case words with hyphens, unique in the catalogue.
   * @pattern ^[a-z0-9]+(-[a-z0-9]+)*$
   */
  readonly id: string;
  /** Other names that it goes by, each of which names it as its id does; none where left out. */
  readonly aliases?: readonly string[];
  /** What is raised or lowered, or the scale it gives. */
  readonly name: string;
  /** What it is for. */
  readonly use: string;
  /**
   * A named publication, `common practice`, `from memory`, `own construction`, or `worked out here
   * from an idea known to the trade`.
   */
  readonly source: string;
  /** The key printed on the harp with exactly these `holes`, in the standard register. */
  readonly label: KeyName;
  /** The position whose key the label names: 1, or 2 for harps sold by their cross-harp key. */
  readonly labelPosition: 1 | 2;
  /**
   * The reeds of the harp that carries `label`, from hole 1 up.
   * @minItems 1
   * @maxItems 16
   */
  readonly holes: readonly HoleReeds[];
}
