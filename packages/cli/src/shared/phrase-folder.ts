import { join } from 'node:path';
import { readInFile } from '@reedplate/files';
import { ReedplateError } from '@reedplate/pitch';
import { type Phrase, readPhrases } from '@reedplate/practice';
import type { Command } from 'commander';
import type { Terminal } from '../terminal.js';

/** The word that names a folder of phrases. */
export interface PhraseFolderWords {
  readonly phrasesFrom?: string;
}

/** What is needed to read a folder of phrases. */
export type PhraseFolderTerminal = Pick<Terminal, 'readText' | 'listFolder'>;

/** Adds `--phrases-from`. */
export function withPhraseFolder(command: Command): Command {
  return command.option(
    '--phrases-from <folder>',
    'folder of phrases of your own: .tab files with heads, or .json',
  );
}

const ENDING = /\.(?:tab|json)$/iu;

/**
 * The phrases of a folder, file by file in the order of their names: tab with heads in `.tab`, JSON in `.json`; files
 * of other kinds may lie beside them. None where no folder is named.
 *
 * @throws ReedplateError what `readPhrases` throws, with `where.file` and `where.line`; `PHRASE_INVALID` for an id
 *   that two files have; `LIST_EMPTY` for a folder without such a file; `FILE_UNREADABLE`
 */
export function readPhraseFolder(
  { phrasesFrom }: PhraseFolderWords,
  terminal: PhraseFolderTerminal,
): readonly Phrase[] {
  if (phrasesFrom === undefined) return [];
  const names = terminal.listFolder(phrasesFrom).filter((name) => ENDING.test(name));
  if (names.length === 0) {
    throw new ReedplateError({
      code: 'LIST_EMPTY',
      value: phrasesFrom,
      expected: 'a folder with .tab or .json files of phrases',
    });
  }
  const fileOf = new Map<string, string>();
  return names.flatMap((name) => {
    const file = join(phrasesFrom, name);
    const text = terminal.readText(file);
    const phrases = readInFile(file, () => readPhrases(text, { id: name.replace(ENDING, '') }));
    for (const { id } of phrases) {
      requireNew(id, file, fileOf.get(id));
      fileOf.set(id, file);
    }
    return phrases;
  });
}

function requireNew(id: string, file: string, before: string | undefined): void {
  if (before === undefined) return;
  throw new ReedplateError({
    code: 'PHRASE_INVALID',
    value: id,
    expected: `another id than a phrase of ${before} has`,
    where: { file },
  });
}
