import { deepFreeze, type KeyName, ReedplateError } from '@reedplate/pitch';
import { canonicalJson } from './canonical-json.js';
import type { StudyShare } from './run/share.js';
import { STUDY_VERSION, studyDigest } from './study-digest.js';
import type { StudySetup } from './study-setup.js';

/** A file that a study read, known by its content. */
export interface StudyInput {
  /** Its name without its folder; `-` for standard input. */
  readonly file: string;
  /** Null where it was no plain file, and could be read but once. */
  readonly bytes: number | null;
  readonly sha256: string | null;
}

/** What was asked of a study besides its setup; what was not asked is left out. */
export interface StudyAsked {
  readonly key?: KeyName;
  readonly part?: number | string;
  readonly first?: number;
  readonly share?: StudyShare;
}

/** All that results rest on, and how far they go: written beside them, as `<results>.manifest.json`. */
export interface StudyManifest {
  /** As every result has it. */
  readonly digest: string;
  /** Version of `@reedplate/study` and of the packages that it stands on, which share it. */
  readonly version: string;
  readonly setup: StudySetup;
  readonly input: readonly StudyInput[];
  readonly asked: StudyAsked;
  /** Whether all tunes are done; the counts are 0 until then. */
  readonly isComplete: boolean;
  readonly tunes: number;
  readonly failures: number;
}

/** The manifest of a study that begins. */
export function beginManifest(
  setup: StudySetup,
  input: readonly StudyInput[],
  asked: StudyAsked,
): StudyManifest {
  return deepFreeze({
    digest: studyDigest(setup),
    version: STUDY_VERSION,
    setup,
    input,
    asked,
    isComplete: false,
    tunes: 0,
    failures: 0,
  });
}

/** What two manifests must share for the results of one to go on those of the other. */
export const studyOf = ({ digest, input, asked }: StudyManifest): string =>
  canonicalJson({ digest, input, asked });

/**
 * The manifests of the parts of a study as that of the whole.
 *
 * @throws ReedplateError `STUDY_INVALID` where they are of different studies, where a part is missing, there twice
 *   or not finished
 * @example
 * ```ts
 * import { mergeStudyManifests } from '@reedplate/study';
 *
 * mergeStudyManifests([]); // throws STUDY_INVALID
 * ```
 */
export function mergeStudyManifests(manifests: readonly StudyManifest[]): StudyManifest {
  const [first] = manifests;
  if (first === undefined) throw invalid(manifests, 'one manifest or more');
  const { share: _, ...asked } = first.asked;
  for (const manifest of manifests) {
    const whole = { ...manifest, asked: { ...manifest.asked, share: first.asked.share } };
    if (studyOf(whole as StudyManifest) !== studyOf(first)) {
      throw invalid(manifest.digest, `manifests of one study and input (here ${first.digest})`);
    }
    if (!manifest.isComplete) throw invalid(manifest.asked.share, 'parts that are finished');
  }
  requireEveryPart(manifests);
  return deepFreeze({
    ...first,
    asked,
    tunes: manifests.reduce((sum, { tunes }) => sum + tunes, 0),
    failures: manifests.reduce((sum, { failures }) => sum + failures, 0),
  });
}

function requireEveryPart(manifests: readonly StudyManifest[]): void {
  const parts = manifests.map(({ asked }) => asked.share ?? { part: 1, of: 1 });
  const of = parts[0]?.of ?? 1;
  const found = new Set(parts.map(({ part }) => part));
  const isWhole = parts.every((share) => share.of === of) && found.size === of;
  if (isWhole && parts.length === of) return;
  const said = parts.map((share) => `${share.part}/${share.of}`).join(', ');
  throw invalid(said, `each of the ${of} parts once`);
}

function invalid(value: unknown, expected: string): ReedplateError {
  return new ReedplateError({ code: 'STUDY_INVALID', value, expected });
}
