import { existsSync, readdirSync, readFileSync } from 'node:fs';
import { join } from 'node:path';
import { readAbc } from '@reedplate/interchange';
import type { StudyTune } from '@reedplate/study';

/** What to do where the corpus is not there. */
export const WHERE_TO_GET_IT = `This study reads tunes in ABC notation. It was made over the Nottingham Music Database in its
cleaned edition (GPL 3), which is not part of this project: search for "Nottingham Music Database
ABC cleaned". Give its folder: tsx examples/playability-study/main.ts path/to/folder`;

/** Every tune with a key in the ABC files of a folder, by file and then by place in it. */
export function readCorpus(folder: string): readonly StudyTune[] | undefined {
  const files = existsSync(folder)
    ? readdirSync(folder).filter((file) => file.endsWith('.abc'))
    : [];
  if (files.length === 0) return undefined;
  return files
    .sort()
    .flatMap((file) =>
      readAbc(readFileSync(join(folder, file))).flatMap(
        ({ key, line }, at): readonly StudyTune[] =>
          key === undefined || line.notes.length === 0
            ? []
            : [{ id: `${file}:${at + 1}`, key, line }],
      ),
    );
}
