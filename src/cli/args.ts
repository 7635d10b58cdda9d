import { type ParseArgsConfig, parseArgs } from 'node:util';

/** A command line that is not understood; the message is for a person. */
export class UsageError extends Error {}

export const UNIT_CHOICES = ['in', 'mm', 'both'] as const;
export type UnitChoice = (typeof UNIT_CHOICES)[number];

export type Command =
  | { readonly verb: 'help'; readonly about: string | undefined }
  | { readonly verb: 'version' }
  | ({ readonly verb: 'check'; readonly file: string; readonly working: boolean } & BuildChoices)
  | ({
      readonly verb: 'pack';
      readonly file: string;
      readonly folder: string;
      readonly date: string | undefined;
    } & BuildChoices)
  | { readonly verb: 'new'; readonly file: string | undefined; readonly force: boolean }
  | { readonly verb: 'schema' }
  | { readonly verb: 'worksheet'; readonly action: 'list'; readonly json: boolean }
  | { readonly verb: 'worksheet'; readonly action: 'describe'; readonly id: string; readonly json: boolean }
  | RunWorksheetCommand;

export interface BuildChoices {
  readonly units: UnitChoice;
  readonly variant: string | undefined;
  readonly json: boolean;
}

export interface RunWorksheetCommand {
  readonly verb: 'worksheet';
  readonly action: 'run';
  readonly id: string;
  /** `-` is standard input. */
  readonly file: string;
  readonly units: UnitChoice;
  readonly working: boolean;
  readonly json: boolean;
}

const OPTIONS = {
  output: { type: 'string', short: 'o' },
  units: { type: 'string' },
  variant: { type: 'string' },
  date: { type: 'string' },
  working: { type: 'boolean' },
  json: { type: 'boolean' },
  force: { type: 'boolean' },
  help: { type: 'boolean', short: 'h' },
  version: { type: 'boolean' },
} as const satisfies ParseArgsConfig['options'];

type OptionName = keyof typeof OPTIONS;
type Values = ReturnType<typeof parseAll>['values'];

/** @throws UsageError */
export function parseCommand(argv: readonly string[]): Command {
  const { values, positionals } = parseAll(argv);
  const [verb, ...rest] = positionals;
  if (values.version) return { verb: 'version' };
  if (values.help || verb === undefined || verb === 'help') {
    return { verb: 'help', about: verb === 'help' ? rest[0] : verb };
  }
  switch (verb) {
    case 'check':
      return checkCommand(rest, values);
    case 'pack':
      return packCommand(rest, values);
    case 'new':
      return newCommand(rest, values);
    case 'schema':
      allow('schema', values, []);
      noMore('schema', rest);
      return { verb: 'schema' };
    case 'worksheet':
      return worksheetCommand(rest, values);
    default:
      throw new UsageError(
        `there is no verb "${verb}"; there are check, pack, new, schema, worksheet and help`,
      );
  }
}

function parseAll(argv: readonly string[]) {
  try {
    return parseArgs({ args: [...argv], options: OPTIONS, allowPositionals: true });
  } catch (error) {
    // Node's sentence names the option; what follows it is advice on its own syntax.
    const [first] = error instanceof Error ? error.message.split('. ') : [String(error)];
    throw new UsageError(first);
  }
}

function checkCommand(rest: readonly string[], values: Values): Command {
  allow('check', values, ['units', 'variant', 'json', 'working']);
  const [file, ...more] = rest;
  if (file === undefined) throw new UsageError('check wants a build file: jigwright check FILE');
  noMore('check', more);
  return { verb: 'check', file, working: values.working ?? false, ...buildChoices(values) };
}

function packCommand(rest: readonly string[], values: Values): Command {
  allow('pack', values, ['units', 'variant', 'json', 'output', 'date']);
  const [file, ...more] = rest;
  if (file === undefined || values.output === undefined || values.output === '') {
    throw new UsageError('pack wants a build file and a folder: jigwright pack FILE -o DIR');
  }
  noMore('pack', more);
  return { verb: 'pack', file, folder: values.output, date: dateOf(values.date), ...buildChoices(values) };
}

function newCommand(rest: readonly string[], values: Values): Command {
  allow('new', values, ['force']);
  const [file, ...more] = rest;
  noMore('new', more);
  return { verb: 'new', file, force: values.force ?? false };
}

function worksheetCommand(rest: readonly string[], values: Values): Command {
  const [action, id, file, ...more] = rest;
  const json = values.json ?? false;
  if (action === 'list') {
    allow('worksheet list', values, ['json']);
    noMore('worksheet list', rest.slice(1));
    return { verb: 'worksheet', action, json };
  }
  if (action !== 'describe' && action !== 'run') {
    throw new UsageError('worksheet wants list, describe ID or run ID [FILE]');
  }
  if (id === undefined)
    throw new UsageError(`worksheet ${action} wants the id of a worksheet; see worksheet list`);
  if (action === 'describe') {
    allow('worksheet describe', values, ['json']);
    noMore('worksheet describe', rest.slice(2));
    return { verb: 'worksheet', action, id, json };
  }
  allow('worksheet run', values, ['json', 'units', 'working']);
  noMore('worksheet run', more);
  return {
    verb: 'worksheet',
    action,
    id,
    file: file ?? '-',
    units: unitsOf(values),
    working: values.working ?? false,
    json,
  };
}

function buildChoices(values: Values): BuildChoices {
  return { units: unitsOf(values), variant: values.variant, json: values.json ?? false };
}

function unitsOf({ units }: Values): UnitChoice {
  if (units === undefined) return 'both';
  const choice = UNIT_CHOICES.find((one) => one === units);
  if (!choice) throw new UsageError(`--units wants ${UNIT_CHOICES.join(', ')}; found "${units}"`);
  return choice;
}

function dateOf(date: string | undefined): string | undefined {
  if (date === undefined) return undefined;
  const time = /^\d{4}-\d{2}-\d{2}$/.test(date) ? new Date(`${date}T00:00:00Z`) : undefined;
  // The date must also come back as it was: there is no February 30.
  if (!time || Number.isNaN(time.getTime()) || time.toISOString().slice(0, 10) !== date) {
    throw new UsageError(`--date wants a day such as 2026-04-30; found "${date}"`);
  }
  return date;
}

function allow(verb: string, values: Values, names: readonly OptionName[]): void {
  const other = (Object.keys(values) as OptionName[]).find((name) => !names.includes(name));
  if (other) throw new UsageError(`${verb} takes no --${other}`);
}

function noMore(verb: string, rest: readonly string[]): void {
  if (rest.length > 0) throw new UsageError(`${verb} does not know what to do with "${rest.join(' ')}"`);
}
