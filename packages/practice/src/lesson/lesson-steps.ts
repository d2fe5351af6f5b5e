import type { Chart, Feel } from '@reedplate/form';
import { formOfChart } from '@reedplate/form';
import { itemAt, noteNameWithOctave, parseKey } from '@reedplate/pitch';
import { tabOfLine } from '@reedplate/tab';
import type { ExerciseKind } from '../exercise/exercise-table.js';
import { makeExercise } from '../exercise/make-exercise.js';
import { barredTab } from '../phrase/barred-tab.js';
import type { PhraseChange } from '../phrase/placed-phrase.js';
import { callsOver } from './calls.js';
import type { LessonGoal, LessonStep } from './lesson.js';
import { type Chosen, type MaterialGround, riffThrough, turnaroundOf } from './material.js';
import { shareMinutes } from './share-minutes.js';

/** Tempo ladders by feel. Common practice, no source. */
const TEMPOS: Readonly<Record<Feel, readonly number[]>> = {
  'slow-12/8': [44, 48, 52, 58],
  shuffle: [66, 76, 88, 100],
  straight: [66, 78, 90, 104],
};

type Content = Pick<LessonStep, 'title' | 'words' | 'line' | 'soundings' | 'tab' | 'judged'> &
  Partial<Pick<LessonStep, 'loop' | 'playedOtherwise' | 'cautions'>>;

const MAKERS: Readonly<Record<LessonGoal, (ground: MaterialGround) => Content | undefined>> = {
  changes: (ground) =>
    exerciseStep(
      ground,
      'roots-in-time',
      'Hear the changes',
      'By landing: the root at each change.',
    ),
  chords: (ground) =>
    exerciseStep(
      ground,
      'chord-rhythm',
      'Chords in time',
      'By ear: every chord full, every rest silent.',
    ),
  'guide-tones': (ground) =>
    exerciseStep(
      ground,
      'thirds-and-sevenths',
      'Thirds and sevenths',
      'By coverage: each change is heard without the band.',
    ),
  riff: (ground) => {
    const riff = riffThrough(ground);
    if (riff === undefined) return undefined;
    const bars = formOfChart(ground.chart).bars.length;
    const loop = { from: 1, to: Math.min(4, bars) };
    return { ...phraseStep(riff, ground, 'A riff through the form'), loop };
  },
  turnaround: (ground) => {
    const turn = turnaroundOf(ground);
    if (turn === undefined) return undefined;
    const last = formOfChart(ground.chart).bars.length;
    return { ...phraseStep(turn, ground, 'The turnaround'), loop: { from: last - 1, to: last } };
  },
  choruses,
};

/** A step for each goal for which there is something, which share the minutes. */
export function stepsFor(
  goals: readonly LessonGoal[],
  minutes: number,
  ground: MaterialGround,
): readonly LessonStep[] {
  const filled = goals.flatMap((goal) => {
    const content = MAKERS[goal](ground);
    return content === undefined ? [] : [{ goal, content }];
  });
  const shares = shareMinutes(
    minutes,
    filled.map(({ goal }) => goal),
  );
  return filled.map(({ goal, content }, at) =>
    stepOf(goal, content, itemAt(shares, at), ground.chart),
  );
}

function stepOf(goal: LessonGoal, content: Content, minutes: number, chart: Chart): LessonStep {
  const bars = formOfChart(chart).bars.length;
  return {
    goal,
    minutes,
    tempos: TEMPOS[chart.feel],
    loop: { from: 1, to: bars },
    backing: { countIn: 1, choruses: Math.max(1, Math.round((minutes * 80) / (bars * 4))) },
    playedOtherwise: [],
    cautions: [],
    ...content,
  };
}

function exerciseStep(
  { chart, harp, level }: MaterialGround,
  kind: ExerciseKind,
  title: string,
  judged: string,
): Content | undefined {
  const made = makeExercise(chart, harp, { kind, level });
  if (!made.playable) return undefined;
  const { goal, line, soundings, tab, changes, cautions } = made;
  return {
    title,
    words: goal,
    line,
    soundings,
    tab,
    judged,
    cautions,
    playedOtherwise: sayChanges(changes, chart),
  };
}

function phraseStep({ phrase, placed }: Chosen, { chart }: MaterialGround, title: string): Content {
  const { line, soundings, tab, changes } = placed;
  return {
    title: `${title}: ${phrase.name.split(', ')[0]}`,
    words: `It trains ${phrase.trains}. Sing it before you play it.`,
    line,
    soundings,
    tab,
    judged: 'By score of 80 and more at the first tempo, then at the next.',
    playedOtherwise: sayChanges(changes, chart),
  };
}

/** Calls to play as they stand and to answer; then choruses of one's own. */
function choruses(ground: MaterialGround): Content | undefined {
  const calls = callsOver(ground);
  if (calls === undefined) return undefined;
  const { line, soundings, answers } = calls;
  return {
    title: 'Choruses of your own',
    words: answers
      ? 'Play each call as it stands, and answer it yourself in the two bars of rest behind it, home to the root; then change the calls.'
      : 'Play the first phrase as it stands, and go on yourself; then change the first phrase.',
    line,
    soundings,
    tab: barredTab(tabOfLine(line, ground.harp, { soundings }), ground.chart.metre),
    judged: 'By score: what it says first is the next thing to practise.',
  };
}

const WHY: Readonly<Record<PhraseChange['why'], string>> = {
  'not-at-level': 'needs a bend or an overblow that this step does without',
  'not-on-harp': 'is not on this harp',
  'no-grip': 'does not lie together with the others',
  'another-tone': 'is not the tone that the chord has there',
};

/** Each kind of change once, with the notes it is about. */
function sayChanges(changes: readonly PhraseChange[], chart: Chart): readonly string[] {
  const key = parseKey(chart.key);
  const said = changes.map(({ wanted, played, why }) => {
    const name = (pitch: number): string => noteNameWithOctave(pitch, { key });
    const instead = played === null ? 'it is left out' : `${name(played)} stands in`;
    return `${name(wanted)} ${WHY[why]}: ${instead}.`;
  });
  return [...new Set(said)];
}
