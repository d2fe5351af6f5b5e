import { createRequire } from 'node:module';
import { childrenOf, readXml, type XmlElement } from './xml-tree.js';

// The package is CommonJS without a name that Node's ESM loader can find.
const { Midi } = createRequire(import.meta.url)('@tonejs/midi') as typeof import('@tonejs/midi');

/** Verovio comes without types: what is used of it. */
interface VerovioPackage {
  readonly default: () => Promise<unknown>;
  readonly VerovioToolkit: new (module: unknown) => Toolkit;
}

interface Toolkit {
  setOptions(options: Readonly<Record<string, string | boolean | number>>): void;
  loadData(data: string): boolean;
  getLog(): string;
  getMEI(options: Readonly<Record<string, never>>): string;
  renderToMIDI(): string;
  getPageCount(): number;
  renderToSVG(page: number): string;
}

/** What Verovio 6.3.0 makes of a score. */
export interface VerovioReading {
  /** Notes in the order and at the times they are played, repeats played out: `start+duration pitch`. */
  readonly notes: readonly (readonly [start: number, duration: number, pitch: number])[];
  /** Chord symbols as `bar:beat symbol`, bars counted as written, a pickup included. */
  readonly harmonies: readonly string[];
  /** Words under the notes, as written. */
  readonly words: readonly string[];
  /** How many notes and chords stand under each beam. */
  readonly beams: readonly number[];
  /** Names of its key, metre and tempo. */
  readonly head: Readonly<Record<string, string | undefined>>;
  /** What it complained of; empty for nothing. */
  readonly log: string;
}

const TICKS = 960;

/** A reader of MusicXML that is not ours. */
export async function openVerovio(): Promise<(xml: string) => VerovioReading> {
  const { default: start } = await load('verovio/wasm');
  const { VerovioToolkit } = await load('verovio/esm');
  const toolkit = new VerovioToolkit(await start());
  // Breaking lines and pages takes most of its time, and changes nothing that sounds.
  toolkit.setOptions({ breaks: 'none', inputFrom: 'xml' });
  return (xml) => {
    if (!toolkit.loadData(xml)) throw new Error(`Verovio does not read it: ${toolkit.getLog()}`);
    const log = toolkit.getLog();
    const mei = readXml(toolkit.getMEI({}));
    return { notes: playedNotes(toolkit), ...writtenMarks(mei), head: headOf(mei), log };
  };
}

/** What Verovio draws of a score, lines broken as written, all pages. */
export async function drawerOfVerovio(
  layout: Readonly<Record<string, string | boolean | number>> = {},
): Promise<(xml: string) => string> {
  const { default: start } = await load('verovio/wasm');
  const { VerovioToolkit } = await load('verovio/esm');
  const toolkit = new VerovioToolkit(await start());
  toolkit.setOptions({ breaks: 'encoded', inputFrom: 'xml', xmlIdChecksum: true, ...layout });
  return (xml) => {
    if (!toolkit.loadData(xml)) throw new Error(`Verovio does not read it: ${toolkit.getLog()}`);
    const pages = Array.from({ length: toolkit.getPageCount() }, (_, at) => at + 1);
    return pages.map((page) => toolkit.renderToSVG(page)).join('\n');
  };
}

function load(name: string): Promise<VerovioPackage> {
  return import(name);
}

function playedNotes(toolkit: Toolkit): VerovioReading['notes'] {
  const { header, tracks } = new Midi(Buffer.from(toolkit.renderToMIDI(), 'base64'));
  const scale = TICKS / header.ppq;
  return tracks
    .flatMap(({ notes }) => notes)
    .map((note) => [note.ticks * scale, note.durationTicks * scale, note.midi] as const)
    .sort((a, b) => a[0] - b[0] || a[2] - b[2]);
}

function writtenMarks(mei: XmlElement): Pick<VerovioReading, 'harmonies' | 'words' | 'beams'> {
  const measures = descendants(mei, 'measure');
  return {
    harmonies: measures.flatMap((measure, at) =>
      childrenOf(measure, 'harm').map(
        ({ attributes, text }) => `${at + 1}:${attributes.get('tstamp')} ${text}`,
      ),
    ),
    words: descendants(mei, 'syl').map(({ text }) => text),
    beams: descendants(mei, 'beam').map(
      (beam) => [...descendants(beam, 'chord'), ...singles(beam)].length,
    ),
  };
}

function headOf(mei: XmlElement): VerovioReading['head'] {
  const attribute = (element: string, name: string): string | undefined =>
    descendants(mei, element)[0]?.attributes.get(name);
  return {
    signature: attribute('keySig', 'sig'),
    mode: attribute('keySig', 'mode'),
    metre: `${attribute('meterSig', 'count')}/${attribute('meterSig', 'unit')}`,
    quartersPerMinute: attribute('scoreDef', 'midi.bpm'),
    program: attribute('instrDef', 'midi.instrnum'),
  };
}

/** Notes that stand in no chord. */
function singles({ children }: XmlElement): readonly XmlElement[] {
  return children.flatMap((each) => {
    if (each.name === 'chord') return [];
    return each.name === 'note' ? [each] : singles(each);
  });
}

function descendants(element: XmlElement, name: string): readonly XmlElement[] {
  return element.children.flatMap((each) =>
    each.name === name ? [each] : descendants(each, name),
  );
}
