import { existsSync } from 'node:fs';
import { readInFile, readText, writeBytes } from '@reedplate/files';
import { ReedplateError, readJson } from '@reedplate/pitch';
import { type StudyManifest, studyOf } from '../manifest.js';

/** Where the manifest of a file of results lies. */
export const manifestPath = (results: string): string => `${results}.manifest.json`;

/** Writes the manifest of results, whole or not at all. */
export function writeManifest(results: string, manifest: StudyManifest): void {
  const text = `${JSON.stringify(manifest, null, 2)}\n`;
  writeBytes(manifestPath(results), new TextEncoder().encode(text));
}

/**
 * The manifest that lies beside a file of results; `undefined` where there is none.
 *
 * @throws ReedplateError `FILE_UNREADABLE`, `JSON_MALFORMED`; `STUDY_INVALID` for what is no manifest
 */
export function readStudyManifest(results: string): StudyManifest | undefined {
  const path = manifestPath(results);
  if (!existsSync(path)) return undefined;
  const value = readInFile(path, () => readJson(readText(path)));
  if (isManifest(value)) return value;
  const expected = 'the manifest of a study';
  throw new ReedplateError({ code: 'STUDY_INVALID', value, expected, where: { file: path } });
}

function isManifest(value: unknown): value is StudyManifest {
  if (typeof value !== 'object' || value === null) return false;
  const { digest, input, asked, isComplete, tunes, failures } = value as Partial<StudyManifest>;
  const isCounted = typeof tunes === 'number' && typeof failures === 'number';
  const isKnown = typeof digest === 'string' && typeof isComplete === 'boolean';
  return isCounted && isKnown && Array.isArray(input) && typeof asked === 'object';
}

/**
 * Refuses to go on with results that were begun with another setup, input or options.
 *
 * @throws ReedplateError `STUDY_INVALID`
 */
export function requireSameStudy(results: string, manifest: StudyManifest): void {
  const before = readStudyManifest(results);
  const where = { file: manifestPath(results) };
  if (before === undefined) {
    const expected = `its manifest ${where.file}, to resume it`;
    throw new ReedplateError({ code: 'STUDY_INVALID', value: results, expected, where });
  }
  if (studyOf(before) === studyOf(manifest)) return;
  const expected = `results of the same study, to resume it (${differenceOf(before, manifest)})`;
  throw new ReedplateError({ code: 'STUDY_INVALID', value: results, expected, where });
}

function differenceOf(before: StudyManifest, now: StudyManifest): string {
  if (before.version !== now.version) return `made by version ${before.version}`;
  if (before.digest !== now.digest) return 'its setup or model was another';
  const isInput = JSON.stringify(before.input) === JSON.stringify(now.input);
  return isInput ? 'it was asked for otherwise' : 'its input was another';
}
