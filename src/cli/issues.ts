import { describeIssue, type Issue } from '../core/quantity/index.ts';

/** An issue as JSON carries it: its data, and the sentence. */
export function issueJson(issue: Issue): object {
  const { at, ...rest } = issue;
  return { ...rest, ...(at ?? {}), text: describeIssue(issue) };
}

/** One line an issue, for stderr. */
export function issueLines(file: string, issues: readonly Issue[]): string {
  const name = file === '-' ? 'standard input' : file;
  return issues.map((issue) => `${name}: ${describeIssue(issue)}\n`).join('');
}

export const toJson = (value: unknown): string => `${JSON.stringify(value, null, 2)}\n`;
