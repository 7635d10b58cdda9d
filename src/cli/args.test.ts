import { describe, expect, test } from 'vitest';
import { parseCommand, UsageError } from './args.ts';

const parse = (line: string) => parseCommand(line.split(' ').filter((word) => word !== ''));

describe('parseCommand', () => {
  test.each([
    ['', { verb: 'help', about: undefined }],
    ['help pack', { verb: 'help', about: 'pack' }],
    ['pack --help', { verb: 'help', about: 'pack' }],
    ['--version', { verb: 'version' }],
    ['schema', { verb: 'schema' }],
    [
      'check a.json',
      { verb: 'check', file: 'a.json', working: false, units: 'both', variant: undefined, json: false },
    ],
    [
      'check - --units in --working --json --variant big',
      { verb: 'check', file: '-', working: true, units: 'in', variant: 'big', json: true },
    ],
    [
      'pack a.json -o out --date 2026-02-28',
      {
        verb: 'pack',
        file: 'a.json',
        folder: 'out',
        date: '2026-02-28',
        units: 'both',
        variant: undefined,
        json: false,
      },
    ],
    ['new', { verb: 'new', file: undefined, force: false }],
    ['new a.json --force', { verb: 'new', file: 'a.json', force: true }],
    ['worksheet list', { verb: 'worksheet', action: 'list', json: false }],
    ['worksheet describe cope --json', { verb: 'worksheet', action: 'describe', id: 'cope', json: true }],
    [
      'worksheet run cope',
      { verb: 'worksheet', action: 'run', id: 'cope', file: '-', units: 'both', working: false, json: false },
    ],
    [
      'worksheet run cope a.json --json --units mm',
      {
        verb: 'worksheet',
        action: 'run',
        id: 'cope',
        file: 'a.json',
        units: 'mm',
        working: false,
        json: true,
      },
    ],
  ])('"%s"', (line, command) => {
    expect(parse(line)).toEqual(command);
  });

  test.each([
    ['chek a.json', 'no verb "chek"'],
    ['check', 'wants a build file'],
    ['check a b', '"b"'],
    ['check a --units feet', 'found "feet"'],
    ['check a --unit in', "'--unit'"],
    ['check a --units', '--units'],
    ['check a --force', 'takes no --force'],
    ['check a -o out', 'takes no --output'],
    ['pack a.json', 'wants a build file and a folder'],
    ['pack -o out', 'wants a build file and a folder'],
    ['pack a.json -o out --date 2026-02-30', '2026-02-30'],
    ['pack a.json -o out --date tomorrow', 'tomorrow'],
    ['new a b', '"b"'],
    ['schema a', '"a"'],
    ['worksheet', 'list, describe ID or run ID'],
    ['worksheet show', 'list, describe ID or run ID'],
    ['worksheet run', 'wants the id'],
    ['worksheet run cope a b', '"b"'],
    ['worksheet list --units in', 'takes no --units'],
  ])('"%s" is a usage error that says %s', (line, says) => {
    expect(() => parse(line)).toThrow(UsageError);
    expect(() => parse(line)).toThrow(says);
  });
});
