import { type Key, type NoteNameWithOctave, noteNameWithOctave, parseKey } from '@reedplate/pitch';
import type {
  NotPlayable,
  PathAlternative,
  PathObjective,
  TermEfforts,
  UnplayableMoment,
} from '@reedplate/playability';
import { PATH_OBJECTIVES } from '@reedplate/playability';
import type { Command } from 'commander';
import { examples } from '../../shared/examples.js';
import { type HarpWords, readHarp, withHarpOptions } from '../../shared/harp-options.js';
import { withJson } from '../../shared/options.js';
import { LINE_FILE, readPieceFile } from '../../shared/piece-file.js';
import { type PlayerWords, readPlayer, withPlayerOptions } from '../../shared/player-options.js';
import { type Paint, printReport } from '../../shared/print.js';
import { readWholeNumber } from '../../shared/read-words.js';
import { sayHarp } from '../../shared/say-harp.js';
import { setColumns } from '../../shared/table.js';
import type { Terminal } from '../../terminal.js';
import { type PathMove, type PathReport, type PlayablePathReport, pathReport } from './report.js';

interface PathWords extends HarpWords, PlayerWords {
  readonly objective: string;
  readonly count: string;
  readonly key?: string;
  readonly json: boolean;
}

/** Gives `reedplate path` its options and what it does. */
export function setUpPath(verb: Command, terminal: Terminal): void {
  withJson(withPlayerOptions(withHarpOptions(verb)))
    .argument('<line>', LINE_FILE)
    .option(
      '--objective <what>',
      `least effort in total, or first in the worst step: ${PATH_OBJECTIVES.join(', ')}`,
      'total',
    )
    .option('--key <key>', 'key of the song, which spells the notes; else that of the line or harp')
    .option('--count <number>', 'how many of the best ways', '1')
    .addHelpText(
      'after',
      examples(
        'reedplate path take.json --harp C --key G',
        'reedplate practice --form basic --key G --harp C --json | jq .line | reedplate path - --harp C',
      ),
    )
    .action((file: string, words: PathWords) => {
      const harp = readHarp(words, terminal);
      const piece = readPieceFile(file, terminal, { harp });
      const key = parseKey(words.key ?? piece.key ?? harp.firstPosition);
      const report = pathReport(piece.line, harp, {
        ...readPlayer(words),
        key: key.name,
        objective: words.objective as PathObjective,
        count: readWholeNumber(words.count, { min: 1, max: 1000, what: 'a number of ways' }),
      });
      printReport(report, words, terminal, (found, paint) => showPath(found, key, paint));
    });
}

function showPath(report: PathReport, key: Key, paint: Paint): readonly string[] {
  const who = `${report.model}, ${report.level}`;
  const title = paint('heading', `on the ${sayHarp(report.harp)} (${who})`);
  return [
    title,
    '',
    ...(report.playable ? showMoves(report, paint) : showObstacles(report, key, paint)),
  ];
}

function showMoves(report: PlayablePathReport, paint: Paint): readonly string[] {
  const rows = report.moves.map((move) => [
    move.beat === 1 ? `${move.bar}` : `${move.bar}:${round(move.beat)}`,
    move.tab,
    move.notes.join(' '),
    round(move.effort),
    sayTerms(move.terms),
    sayAir(move.air),
    sayWhy(move),
  ]);
  const [head = '', ...body] = setColumns([
    ['bar', 'tab', 'notes', 'effort', 'made of', 'air', 'why'],
    ...rows,
  ]);
  return [
    paint('heading', head),
    ...body,
    '',
    `effort ${round(report.effort)} points, worst ${round(report.worst)}: ${sayTerms(report.terms) || 'none'}`,
    ...report.next.map(({ tab, effort }) => `next: ${tab} (${round(effort)})`),
    '',
    paint('remark', 'a point is a move to the next hole at leisure; the figures are assumptions'),
  ];
}

const round = (value: number): string => `${Math.round(value * 100) / 100}`;

const TERM_NAMES: Readonly<Record<keyof TermEfforts, string>> = {
  technique: 'bending',
  chord: 'chord',
  hold: 'holding',
  reach: 'reach',
  breath: 'breath turn',
  bendMove: 'into and out of bends',
  repeat: 'repeat',
  hurry: 'hurry',
  air: 'air',
};

function sayTerms(terms: TermEfforts): string {
  return (Object.keys(TERM_NAMES) as (keyof TermEfforts)[])
    .filter((term) => terms[term] !== undefined)
    .map((term) => `${TERM_NAMES[term]} ${round(terms[term] ?? 0)}`)
    .join(', ');
}

function sayAir(seconds: number): string {
  if (seconds === 0) return 'even';
  return seconds > 0 ? `${round(seconds)} s in` : `${round(-seconds)} s out`;
}

function sayWhy({ reason, others: [nearest] }: PathMove): string {
  if (reason === 'only-way' || nearest === undefined) return 'the only way';
  if (reason === 'first-of-equals') return `as easy as ${nearest.tab}, which stands later`;
  return `${nearest.tab} would cost ${round(nearest.more)} more`;
}

function showObstacles(report: NotPlayable, key: Key, paint: Paint): readonly string[] {
  const percent = Math.floor(report.playableShare * 100);
  const rest = report.missing - report.first.length;
  return [
    `${paint('warning', 'not playable:')} ${report.missing} cannot be sounded, ${percent} % can`,
    ...report.first.map((moment) => `  ${sayObstacle(moment, key)}`),
    ...(rest > 0 ? [`  and ${rest} more`] : []),
    ...(report.alternatives.length === 0 ? [] : ['', 'but it can be played']),
    ...report.alternatives.map((alternative) => `  ${sayAlternative(alternative)}`),
  ];
}

const OBSTACLES: Readonly<Record<UnplayableMoment['obstacle'], string>> = {
  'out-of-range': 'is outside the range of the harp',
  gap: 'is not on this harp',
  'beyond-level': 'needs a technique beyond the level',
  'no-grip': 'cannot be held together on one breath',
};

function sayObstacle({ bar, beat, pitches, obstacle }: UnplayableMoment, key: Key): string {
  const notes = pitches.map((pitch): NoteNameWithOctave => noteNameWithOctave(pitch, { key }));
  return `bar ${bar}, beat ${round(beat)}: ${notes.join(' ')} ${OBSTACLES[obstacle]}`;
}

function sayAlternative(alternative: PathAlternative): string {
  const effort = `effort ${round(alternative.effort)}`;
  if (alternative.change === 'level') return `at level ${alternative.level}: ${effort}`;
  if (alternative.change === 'harp') return `on the ${sayHarp(alternative.harp)}: ${effort}`;
  const way = alternative.semitones > 0 ? 'up' : 'down';
  const octaves = Math.abs(alternative.semitones) / 12;
  return `${octaves === 1 ? 'an octave' : `${octaves} octaves`} ${way}: ${effort}`;
}
