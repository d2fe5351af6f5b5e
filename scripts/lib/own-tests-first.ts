import { relative } from 'node:path';
import { BaseSequencer, type TestSpecification } from 'vitest/node';
import { ROOT } from './root.mjs';

/** Test files that were changed, or stand beside a file that was, as `npm test` found them. */
const first = new Set<string>(JSON.parse(process.env.TESTS_FIRST ?? '[]'));

/** Runs the tests of changed files before those that only rest on them. */
export class OwnTestsFirst extends BaseSequencer {
  override async sort(files: TestSpecification[]): Promise<TestSpecification[]> {
    const sorted = await super.sort(files);
    const isFirst = ({ moduleId }: TestSpecification) => first.has(relative(ROOT, moduleId));
    return [...sorted.filter(isFirst), ...sorted.filter((file) => !isFirst(file))];
  }
}
