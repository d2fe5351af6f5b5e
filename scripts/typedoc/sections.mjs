import { existsSync, readFileSync } from 'node:fs';
import { Comment, CommentTag, Converter, Renderer } from 'typedoc';
import { ROOT } from '../lib/root.mjs';

// Groups each package's page as its index file does: a comment there is the heading of what follows it.

const INTERNAL = /alone$/u;

/**
 * The heading that stands above each exported name of an index file.
 *
 * @param {string} text
 * @returns {ReadonlyMap<string, string>}
 */
export function sectionsOf(text) {
  const sections = new Map();
  let heading = '';
  for (const line of text.replace(/\/\*[\s\S]*?\*\//gu, '').split('\n')) {
    const comment = /^\/\/ (?!biome)(.+)$/u.exec(line);
    if (comment?.[1] !== undefined) heading = comment[1].replace(/[.:]$/u, '');
    if (heading === '' || INTERNAL.test(heading)) continue;
    for (const [name] of line.replace(/ from '.*/u, '').matchAll(/[A-Za-z_]\w*/gu)) {
      if (!['export', 'type'].includes(name) && !sections.has(name)) sections.set(name, heading);
    }
  }
  return sections;
}

/** @param {import('typedoc').Application} app */
export function load(app) {
  app.renderer.on(Renderer.EVENT_BEGIN, ({ project }) => {
    for (const page of project.documents ?? []) page.name = titleOf(page);
  });
  app.converter.on(Converter.EVENT_RESOLVE_BEGIN, (context) => {
    const dir = (context.project.packageName ?? '').replace(/^@reedplate\//u, '');
    const index = `${ROOT}packages/${dir}/src/index.ts`;
    if (!existsSync(index)) return;
    const sections = sectionsOf(readFileSync(index, 'utf8'));
    for (const reflection of context.project.children ?? []) {
      const section = sections.get(reflection.name);
      if (section === undefined) continue;
      for (const holder of [reflection, ...(reflection.signatures ?? [])]) place(holder, section);
    }
  });
}

/**
 * What stands as the heading of a guide, instead of the name of its file.
 *
 * @param {import('typedoc').DocumentReflection} page
 */
function titleOf({ name, content }) {
  const [first] = content;
  return /^\s*# (.+)$/mu.exec(first?.kind === 'text' ? first.text : '')?.[1] ?? name;
}

/**
 * Puts what has a docstring under a heading.
 *
 * @param {import('typedoc').Reflection} holder
 * @param {string} section
 */
function place(holder, section) {
  holder.comment ??= new Comment();
  const tags = holder.comment.blockTags;
  if (tags.some(({ tag }) => tag === '@category')) return;
  tags.push(new CommentTag('@category', [{ kind: 'text', text: section }]));
}
