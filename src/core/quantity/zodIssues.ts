import { z } from 'zod';
import { hostilePlace } from './hostile.ts';
import type { Issue } from './issue.ts';
import { kindFacts } from './kinds.ts';
import { quantityMeta } from './meta.ts';
import { nearestName } from './nearest.ts';
import { bad, good, type Outcome } from './outcome.ts';
import { defOf, knownKeys, optionThatFits, schemaAt, unwrapped, valueAt } from './schemaWalk.ts';

type ZodIssue = z.core.$ZodIssue;

/** Of a hostile object with thousands of unknown keys, only the first ones are compared with the known. */
const MOST_SUGGESTED = 100;

/** Parses plain JSON data and, on failure, gives every issue with its path. Never throws. */
export function readWith<T>(schema: z.ZodType<T>, data: unknown): Outcome<T> {
  const hostile = hostilePlace(data);
  if (hostile)
    return bad({ code: 'wrong-type', path: pathText(hostile), given: 'an object', wanted: 'plain JSON' });
  const parsed = schema.safeParse(data, { reportInput: true });
  if (parsed.success) return good(parsed.data);
  const [first, ...rest] = issuesOfZod(parsed.error, schema, data);
  if (!first) throw new Error('a parse failed without an issue');
  return bad(first, ...rest);
}

/**
 * Errors of a schema as issues. With `schema`, unknown keys get the nearest key known at their place and
 * wrong types say which quantity is wanted; with `data`, what was found is shown.
 */
export function issuesOfZod(error: z.core.$ZodError, schema?: z.core.$ZodType, data?: unknown): Issue[] {
  return error.issues.flatMap((issue) => issuesOf(issue, { schema, data, path: [] }));
}

/** A place in the file: `stacks.rearAxle.items[2].length`. */
export function pathText(path: readonly PropertyKey[]): string {
  return path.reduce<string>((text, step) => {
    if (typeof step === 'number') return `${text}[${step}]`;
    const key = String(step);
    const written = /^[\w$-]+$/.test(key) ? key : JSON.stringify(key);
    return text === '' ? written : `${text}.${written}`;
  }, '');
}

interface Root {
  readonly schema: z.core.$ZodType | undefined;
  readonly data: unknown;
  /** Path of `schema` in the file. */
  readonly path: readonly PropertyKey[];
}

function issuesOf(issue: ZodIssue, root: Root): Issue[] {
  const fullPath = [...root.path, ...issue.path];
  const path = pathText(fullPath);
  const schema = root.schema && schemaAt(root.schema, issue.path, root.data);
  const found = foundAt(issue, root);
  switch (issue.code) {
    case 'custom': {
      const own = issue.params?.issue as Issue | undefined;
      return [own ? withPath(own, path) : { code: 'conflict', path, reason: issue.message }];
    }
    case 'unrecognized_keys': {
      const known = schema ? knownKeys(schema, found.value) : [];
      return issue.keys.map((key, index) => unknownKey(key, fullPath, index < MOST_SUGGESTED ? known : []));
    }
    case 'invalid_union':
      return unionIssues(issue, schema, found, fullPath);
    case 'too_small':
    case 'too_big':
      // Of an object with a `length` where a list is wanted; its type has an issue of its own.
      return (issue.origin as string) === 'unknown' ? [] : [rangeIssue(issue, path, found)];
    case 'invalid_value':
      return [
        found.isMissing
          ? { code: 'missing', path, wanted: wantedOf(schema, issue) }
          : valueIssue(issue, path, found),
      ];
    case 'invalid_key':
      return issue.issues.flatMap((one) => keyIssue(one, path, String(issue.path.at(-1))));
    default:
      return [typeIssue(path, found, wantedOf(schema, issue))];
  }
}

/** A key of a record that its rule for names refuses. */
function keyIssue(issue: ZodIssue, path: string, key: string): Issue {
  const found: Found = { value: key, isKnown: true, isMissing: false, text: describe(key) };
  if (issue.code === 'too_small' || issue.code === 'too_big') return rangeIssue(issue, path, found);
  return typeIssue(path, { ...found, text: `the name "${clip(key)}"` }, wantedOf(undefined, issue));
}

interface Found {
  readonly value: unknown;
  readonly isKnown: boolean;
  readonly isMissing: boolean;
  readonly text: string;
}

/** Zod keeps the input only when asked; else its message names the type received. */
function foundAt(issue: ZodIssue, root: Root): Found {
  const isKnown = root.data !== undefined || 'input' in issue;
  const value = root.data !== undefined ? issue.path.reduce<unknown>(valueAt, root.data) : issue.input;
  if (isKnown) return { value, isKnown, isMissing: value === undefined, text: describe(value) };
  const nested = issue.code === 'invalid_union' ? issue.errors[0]?.[0]?.message : undefined;
  const received = /received (\S+)$/.exec(nested ?? issue.message)?.[1] ?? 'another value';
  return { value: undefined, isKnown, isMissing: received === 'undefined', text: received };
}

function unionIssues(
  issue: z.core.$ZodIssueInvalidUnion,
  schema: z.core.$ZodType | undefined,
  found: Found,
  fullPath: readonly PropertyKey[],
): Issue[] {
  const path = pathText(fullPath);
  if ('options' in issue && issue.options) return [tagIssue(path, found, issue.options.map(String))];
  if (found.isMissing) return [{ code: 'missing', path, wanted: wantedOf(schema, issue) }];
  if (schema === undefined || quantityMeta(unwrapped(schema)))
    return [typeIssue(path, found, wantedOf(schema, issue))];
  const inner = unwrapped(schema);
  const def = defOf(inner);
  if (def.type !== 'union') return [typeIssue(path, found, wantedOf(schema, issue))];
  const option = optionThatFits(def.options, found.value);
  const errors = option && issue.errors[def.options.indexOf(option)];
  if (!errors || errors.length === 0) return [typeIssue(path, found, wantedOf(schema, issue))];
  return errors.flatMap((one) => issuesOf(one, { schema: option, data: found.value, path: fullPath }));
}

/** An unknown or missing tag of a tagged union: say which names there are. */
function tagIssue(path: string, found: Found, known: readonly string[]): Issue {
  if (found.isMissing) return { code: 'missing', path, wanted: `one of ${known.join(', ')}` };
  return found.isKnown && typeof found.value === 'string'
    ? nameIssue(path, found.value, 'name', known)
    : { code: 'wrong-type', path, given: found.text, wanted: `one of ${known.join(', ')}` };
}

function valueIssue(issue: z.core.$ZodIssueInvalidValue, path: string, found: Found): Issue {
  const known = issue.values.map(String);
  if (typeof found.value !== 'string') return typeIssue(path, found, `one of ${known.join(', ')}`);
  return nameIssue(path, found.value, 'name', known);
}

function nameIssue(path: string, given: unknown, wanted: string, known: readonly string[]): Issue {
  const text = clip(String(given));
  const nearest = nearestName(text, known);
  const what = `${wanted} (${known.slice(0, 12).join(', ')}${known.length > 12 ? ' …' : ''})`;
  return {
    code: 'unknown-name',
    path,
    given: text,
    wanted: what,
    ...(nearest !== undefined ? { nearest } : {}),
  };
}

function unknownKey(key: string, at: readonly PropertyKey[], known: readonly string[]): Issue {
  const nearest = nearestName(key, known);
  const path = pathText([...at, key]);
  return { code: 'unknown-key', path, given: clip(key), ...(nearest !== undefined ? { nearest } : {}) };
}

function rangeIssue(
  issue: z.core.$ZodIssueTooSmall | z.core.$ZodIssueTooBig,
  path: string,
  found: Found,
): Issue {
  const unit =
    { string: 'characters', array: 'items', number: '', int: '' }[issue.origin as string] ?? issue.origin;
  const given = sizeOf(found.value);
  const limit = Number(issue.code === 'too_small' ? issue.minimum : issue.maximum);
  if (given === undefined) {
    const side = issue.code === 'too_small' ? 'at least' : 'at most';
    return { code: 'wrong-type', path, given: found.text, wanted: `${side} ${limit} ${unit}`.trim() };
  }
  if (issue.code === 'too_big' && unit !== '') return { code: 'too-large', path, given, max: limit, unit };
  if (issue.code === 'too_big') return { code: 'out-of-range', path, given, max: limit, unit };
  const bound = issue.inclusive === false ? { above: limit } : { min: limit };
  return { code: 'out-of-range', path, given, ...bound, unit };
}

function sizeOf(value: unknown): number | undefined {
  if (typeof value === 'number') return value;
  return typeof value === 'string' || Array.isArray(value) ? value.length : undefined;
}

function typeIssue(path: string, found: Found, wanted: string): Issue {
  return found.isMissing
    ? { code: 'missing', path, wanted }
    : { code: 'wrong-type', path, given: found.text, wanted };
}

/** What belongs at a place, in words; a field's own description says it best. */
function wantedOf(schema: z.core.$ZodType | undefined, issue: ZodIssue): string {
  const meta = schema && quantityMeta(unwrapped(schema));
  if (meta) return `${kindFacts[meta.kind].name}, for example ${kindFacts[meta.kind].example}`;
  if (issue.code === 'not_multiple_of') return `a multiple of ${issue.divisor}`;
  if (issue.code === 'invalid_format') return formatWanted(schema, issue);
  if (issue.code === 'invalid_value') return `one of ${issue.values.map(String).join(', ')}`;
  const base =
    issue.code === 'invalid_type'
      ? typeName(issue.expected)
      : schema && typeName(defOf(unwrapped(schema)).type);
  const description = descriptionOf(schema);
  if (base === undefined) return description ?? 'another form';
  return description === undefined ? base : `${base}: ${description}`;
}

/** A description stands on the wrapper (optional …) or on what it wraps. */
const descriptionOf = (schema: z.core.$ZodType | undefined): string | undefined =>
  schema &&
  (z.globalRegistry.get(schema)?.description ?? z.globalRegistry.get(unwrapped(schema))?.description);

/** A rule for texts says best in its own message what it wants; zod's own begin with "Invalid". */
function formatWanted(
  schema: z.core.$ZodType | undefined,
  issue: z.core.$ZodIssueInvalidStringFormat,
): string {
  if (!issue.message.startsWith('Invalid')) return issue.message;
  const description = descriptionOf(schema);
  if (description !== undefined) return `a text: ${description}`;
  return issue.format === 'regex'
    ? `a text that matches ${issue.pattern}`
    : `a text of the form ${issue.format}`;
}

function typeName(type: string): string {
  const names: Readonly<Record<string, string>> = {
    string: 'a text',
    number: 'a number',
    int: 'a whole number',
    boolean: 'true or false',
    object: 'an object { … }',
    record: 'an object { … }',
    array: 'a list [ … ]',
    tuple: 'a list [ … ]',
    union: 'another form',
  };
  return names[type] ?? type;
}

function describe(value: unknown): string {
  if (value === null) return 'null';
  if (Array.isArray(value)) return 'a list';
  if (typeof value === 'object') return 'an object';
  if (typeof value === 'string') return `the text "${clip(value)}"`;
  return clip(String(value));
}

const clip = (text: string): string => (text.length > 64 ? `${text.slice(0, 64)}…` : text);

const withPath = (issue: Issue, path: string): Issue => ({
  ...issue,
  path: issue.path === '' ? path : path === '' ? issue.path : `${path}.${issue.path}`,
});
