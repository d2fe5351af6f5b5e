import { writeMidi } from '@reedplate/interchange';
import { makeLesson } from '@reedplate/practice';
import { hearMidi } from './sound.js';

/** The three lessons of the page. */
export const LESSONS = [
  { form: 'quick-change', key: 'A', level: 'natural' },
  { form: 'minor', key: 'Dm', harp: 'C' },
  { form: 'jazz', key: 'F' },
] as const;

/** A row for each step of each lesson: what a pitch tracker heard of it through fluidsynth. */
export function lessonsByEar(): {
  readonly rows: readonly string[];
  readonly faults: readonly string[];
} {
  const faults: string[] = [];
  const rows = LESSONS.flatMap((options) => {
    const { steps, chart } = makeLesson(options);
    return steps.map(({ title, line, tempos }) => {
      const [tempo = 80] = tempos;
      const sheet = { line: { ...line, tempo }, chart: { ...chart, tempo } };
      const heard = hearMidi(writeMidi(sheet));
      faults.push(...heard.faults.map((fault) => `${chart.key}, ${title}: ${fault}`));
      return `| ${chart.key} | ${title.toLowerCase()} | ${tempo} | ${heard.right} of ${heard.alone} | ${heard.loud} of ${heard.together} |`;
    });
  });
  return { rows, faults };
}
