import { ARTICLES } from './bibliography-articles.js';
import { OTHER } from './bibliography-other.js';
import { REFERENCES } from './bibliography-references.js';
import { TEXTS } from './bibliography-texts.js';

/** Everything that tests of facts rest on, publications first. */
export const BIBLIOGRAPHY = [...TEXTS, ...REFERENCES, ...ARTICLES, ...OTHER] as const;

/** Id of a source in the bibliography. */
export type SourceId = (typeof BIBLIOGRAPHY)[number]['id'];
