import type { SourceRef } from './source.ts';

/** A position in a text file, both counted from 1. */
export interface TextPosition {
  readonly line: number;
  readonly column: number;
}

interface IssueBase {
  /** Path of the field in the file, e.g. `stacks.rearAxle.items[2].length`; '' is the whole file. */
  readonly path: string;
  /** Where in the text, once the reader knows it. */
  readonly at?: TextPosition;
}

/** Something wrong with an input, as data; {@link describeIssue} makes the text at the edge. */
export type Issue = IssueBase &
  (
    | { readonly code: 'not-json'; readonly reason: string }
    | {
        readonly code: 'unreadable';
        readonly given: string;
        readonly wanted: string;
        readonly example: string;
      }
    | { readonly code: 'wrong-type'; readonly given: string; readonly wanted: string }
    | { readonly code: 'missing'; readonly wanted: string }
    | { readonly code: 'unknown-key'; readonly given: string; readonly nearest?: string }
    | {
        readonly code: 'unknown-name';
        readonly given: string;
        readonly wanted: string;
        readonly nearest?: string;
      }
    | { readonly code: 'duplicate-name'; readonly given: string }
    | {
        readonly code: 'out-of-range';
        /** Value, limits and `unit` are in edge units (mm, degrees …). */
        readonly given: number;
        readonly min?: number;
        readonly max?: number;
        /** Strict lower limit: the value must be more than this. */
        readonly above?: number;
        readonly unit: string;
      }
    | {
        readonly code: 'not-in-table';
        readonly given: string;
        readonly nearest: readonly string[];
        readonly source?: SourceRef;
      }
    | { readonly code: 'too-large'; readonly given: number; readonly max: number; readonly unit: string }
    | { readonly code: 'version'; readonly given: string; readonly newest: number }
    | { readonly code: 'conflict'; readonly reason: string }
  );

/** One line a builder can act on: the place, what was found, what is wanted, an example. */
export function describeIssue(issue: Issue): string {
  const at = issue.at ? ` (line ${issue.at.line}, column ${issue.at.column})` : '';
  const place = issue.path === '' ? `the file${at}` : `${issue.path}${at}`;
  return `${place}: ${describeWhat(issue)}`;
}

function describeWhat(issue: Issue): string {
  switch (issue.code) {
    case 'not-json':
      return `not readable as JSON: ${issue.reason}`;
    case 'unreadable':
      return `found "${issue.given}", wanted ${issue.wanted}, for example ${issue.example}`;
    case 'wrong-type':
      return `found ${issue.given}, wanted ${issue.wanted}`;
    case 'missing':
      return `missing; wanted ${issue.wanted}`;
    case 'unknown-key':
      return `unknown key "${issue.given}"${issue.nearest ? `; did you mean "${issue.nearest}"?` : ''}`;
    case 'unknown-name':
      return `no ${issue.wanted} is called "${issue.given}"${issue.nearest ? `; did you mean "${issue.nearest}"?` : ''}`;
    case 'duplicate-name':
      return `the name "${issue.given}" is used more than once`;
    case 'out-of-range':
      return `found ${measured(issue.given, issue.unit)}, wanted ${describeRange(issue)}`;
    case 'not-in-table':
      return `"${issue.given}" is not in the table; nearest: ${issue.nearest.join(', ')}`;
    case 'too-large':
      return `found ${measured(issue.given, issue.unit)}, at most ${measured(issue.max, issue.unit)} are taken`;
    case 'version':
      return `file version ${issue.given} is not known; this program reads up to version ${issue.newest}`;
    case 'conflict':
      return issue.reason;
  }
}

function describeRange({ min, max, above, unit }: Extract<Issue, { code: 'out-of-range' }>): string {
  const lower = above !== undefined ? `more than ${above}` : min !== undefined ? `at least ${min}` : '';
  const upper = max !== undefined ? `at most ${max}` : '';
  const range =
    above === undefined && lower && upper ? `${min} to ${max}` : [lower, upper].filter(Boolean).join(' and ');
  return measured(range, unit);
}

const measured = (value: number | string, unit: string): string =>
  unit === '' ? `${value}` : `${value} ${/(?:^| )1$/.test(`${value}`) ? singular(unit) : unit}`;

/** Units of measure stand as they are; words lose their s. */
const singular = (unit: string): string => (/^[a-z]{4,}s$/.test(unit) ? unit.slice(0, -1) : unit);
