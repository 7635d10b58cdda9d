import { existsSync, mkdtempSync, readFileSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { afterEach, beforeEach, describe, expect, test } from 'vitest';
import type { Finding } from '../core/findings/index.ts';
import { bad, good, mm } from '../core/quantity/index.ts';
import { worksheets } from '../core/worksheets/index.ts';
import type { Core, ShopFiles } from './core.ts';
import { EXIT } from './exit.ts';
import { run } from './main.ts';
import { startProgress } from './progress.ts';
import type { PackFile } from './writePack.ts';

let room: string;
beforeEach(() => {
  room = mkdtempSync(join(tmpdir(), 'jigwright-cli-'));
});
afterEach(() => rmSync(room, { recursive: true, force: true }));

const finding = (severity: Finding['severity']): Finding => ({
  id: `chain-line.offset:${severity}`,
  severity,
  question: 'together',
  part: 'final drive',
  what: 'the sprockets are out of line',
  value: mm(25.4),
  limit: mm(1),
  margin: mm(-24.4),
  kind: 'length',
  why: 'a chain out of line wears its side plates',
  remedy: 'make the spacer longer',
  source: { key: 'practice', where: 'chain line' },
});

const figure = {
  id: 'drive.final.offset',
  symbol: 'e',
  name: 'offset of the chain line',
  value: mm(25.4),
  kind: 'length' as const,
  formula: 'e = y2 - y1',
  inputs: [{ name: 'y1', value: mm(10), kind: 'length' as const }],
  source: { key: 'derived', where: 'chain line' },
};

/** A core that solves any text that starts with `{` to the given findings, to test the door alone. */
const coreWith = (...findings: Finding[]): Core => ({
  readBuild: (text) =>
    text.startsWith('{')
      ? good(text)
      : bad({ code: 'not-json', path: '', reason: 'a value is wanted here', at: { line: 1, column: 1 } }),
  solve: () => ({ findings, figures: [figure] }),
  bookFiles: (_solved, { date, units, fonts }) => [
    { path: 'report.json', bytes: new TextEncoder().encode(`${date} ${units} ${fonts.regular.length > 0}`) },
  ],
  startShopFiles: ({ text }) => shopFiles([{ path: 'parts.csv', bytes: new TextEncoder().encode(text) }]),
  buildJsonSchema: () => ({ type: 'object' }),
});

const shopFiles = (files: ShopFiles['files']): ShopFiles => ({ files, stop: async () => {} });

async function* failing(): AsyncGenerator<PackFile> {
  yield { path: 'parts.csv', bytes: new Uint8Array(1) };
  throw new Error('no template');
}

const readFonts = async () => ({ regular: new Uint8Array(1), bold: new Uint8Array(1) });

interface Ran {
  readonly code: number;
  readonly out: string;
  readonly err: string;
}

async function cli(argv: readonly string[], options: { core?: Core; stdin?: string } = {}): Promise<Ran> {
  let out = '';
  let err = '';
  const terminal = {
    out: (text: string) => {
      out += text;
    },
    err: (text: string) => {
      err += text;
    },
    readStdin: async () => options.stdin ?? '',
    now: () => 0,
    today: () => '2026-04-30',
    readFonts,
  };
  const code = await run(argv, terminal, async () => options.core ?? coreWith());
  return { code, out, err };
}

const buildFile = (text = '{}'): string => {
  const file = join(room, 'a.build.json');
  writeFileSync(file, text);
  return file;
};

describe('check', () => {
  test('tells findings the worst first, with value, limit, why and what to do, in both systems', async () => {
    const { code, out, err } = await cli(['check', buildFile()], {
      core: coreWith(finding('note'), finding('stop')),
    });
    expect(code).toBe(EXIT.stops);
    expect(err).toBe('');
    expect(out.indexOf('STOP')).toBeLessThan(out.indexOf('NOTE'));
    expect(out).toContain('is 25.4 mm (1 in), limit 1.0 mm (0.039 in)');
    expect(out).toContain('do: make the spacer longer');
    expect(out.trimEnd().endsWith('1 stop, 0 caution, 1 note')).toBe(true);
  });

  test('exit code 0 when nothing stops; never says safe', async () => {
    const { code, out } = await cli(['check', buildFile()], { core: coreWith(finding('caution')) });
    expect(code).toBe(EXIT.done);
    expect(out).not.toMatch(/\bsafe\b/i);
  });

  test('--units and --working', async () => {
    const { out } = await cli(['check', buildFile(), '--units', 'in', '--working'], {
      core: coreWith(finding('stop')),
    });
    expect(out).toContain('offset of the chain line: e = 1 in\n    e = y2 - y1\n    with y1 = 25/64 in');
    expect(out).not.toContain(' mm');
  });

  test('--json has the same in edge units', async () => {
    const { out } = await cli(['check', '-', '--json', '--working'], {
      core: coreWith(finding('stop')),
      stdin: '{}',
    });
    const json = JSON.parse(out);
    expect(json.counts).toEqual({ stop: 1, caution: 0, note: 0 });
    expect(json.findings[0]).toMatchObject({ unit: 'mm', part: 'final drive' });
    expect(json.findings[0].value).toBeCloseTo(25.4, 9);
    expect(json.figures[0]).toMatchObject({ unit: 'mm', formula: 'e = y2 - y1' });
  });

  test('issues of a file go to stderr with line and column, as JSON to stdout when asked', async () => {
    const file = buildFile('nonsense');
    const plain = await cli(['check', file]);
    expect(plain).toEqual({
      code: EXIT.badInput,
      out: '',
      err: `${file}: the file (line 1, column 1): not readable as JSON: a value is wanted here\n`,
    });
    const json = await cli(['check', file, '--json']);
    expect(json.code).toBe(EXIT.badInput);
    expect(JSON.parse(json.out).issues).toEqual([
      expect.objectContaining({ code: 'not-json', line: 1, column: 1 }),
    ]);
  });

  test.each([
    ['a file that is not there', () => join(room, 'none.json'), 'there is no such file'],
    ['a folder', () => room, 'that is a folder'],
    [
      'bytes that are no text',
      () => {
        writeFileSync(join(room, 'b'), Buffer.from([0xff, 0xfe, 0x00]));
        return join(room, 'b');
      },
      'not UTF-8',
    ],
  ])('%s', async (_what, file, says) => {
    const { code, err } = await cli(['check', file()]);
    expect(code).toBe(EXIT.badInput);
    expect(err).toContain(says);
  });
});

describe('pack', () => {
  test('writes the files with the day and units asked for; findings that stop do not stop the pack', async () => {
    const out = join(room, 'out');
    const asked = ['pack', buildFile(), '-o', out, '--date', '2026-01-02', '--units', 'in'];
    const first = await cli(asked, { core: coreWith(finding('stop')) });
    expect(first.code).toBe(EXIT.stops);
    expect(first.out).toContain('1 stop, 0 caution, 0 note');
    expect(readFileSync(join(out, 'report.json'), 'utf8')).toBe('2026-01-02 in true');
    const again = await cli(['pack', buildFile(), '-o', out, '--json']);
    expect(again.code).toBe(EXIT.done);
    expect(JSON.parse(again.out).files.map((file: { path: string }) => file.path)).toEqual([
      'report.json',
      'parts.csv',
    ]);
    expect(readFileSync(join(out, 'report.json'), 'utf8')).toBe('2026-04-30 both true');
  });

  test('a folder that holds other files is refused', async () => {
    writeFileSync(join(room, 'mine.txt'), 'mine');
    const { code, err } = await cli(['pack', buildFile(), '-o', room]);
    expect(code).toBe(EXIT.notWritten);
    expect(err).toContain('mine.txt');
    expect(readFileSync(join(room, 'mine.txt'), 'utf8')).toBe('mine');
  });

  test.each([
    ['a file that is not valid', () => buildFile('nonsense'), [], EXIT.badInput],
    ['a fault while the files of the shop are drawn', () => buildFile(), failing(), EXIT.fault],
  ])('%s writes nothing and stops what is being drawn', async (_what, file, files, code) => {
    let stopped = 0;
    const stop = async () => {
      stopped += 1;
    };
    const core = { ...coreWith(), startShopFiles: () => ({ files, stop }) };
    const ran = await cli(['pack', file(), '-o', join(room, 'out')], { core });
    expect({ code: ran.code, stopped }).toEqual({ code, stopped: 1 });
    expect(existsSync(join(room, 'out'))).toBe(false);
  });
});

describe('new and schema', () => {
  test('new writes a file once; replacing it takes --force', async () => {
    const file = join(room, 'my.build.json');
    expect((await cli(['new', file])).code).toBe(EXIT.done);
    writeFileSync(file, 'mine');
    const again = await cli(['new', file]);
    expect(again.code).toBe(EXIT.notWritten);
    expect(again.err).toContain('--force');
    expect(readFileSync(file, 'utf8')).toBe('mine');
    expect((await cli(['new', file, '--force'])).code).toBe(EXIT.done);
    expect(JSON.parse(readFileSync(file, 'utf8')).about.name).toBe('My build');
    expect((await cli(['new', join(room, 'no', 'folder')])).code).toBe(EXIT.notWritten);
  });

  test('new without a file and schema print', async () => {
    expect(JSON.parse((await cli(['new'])).out).about.name).toBe('My build');
    expect(JSON.parse((await cli(['schema'])).out)).toEqual({ type: 'object' });
  });
});

describe('worksheet', () => {
  const [sheet] = worksheets;
  if (!sheet) throw new Error('there is no worksheet to test with');
  const example = JSON.stringify(sheet.example.input);

  test('list and describe', async () => {
    const list = JSON.parse((await cli(['worksheet', 'list', '--json'])).out);
    expect(list.map((one: { id: string }) => one.id)).toEqual(worksheets.map((one) => one.id));
    for (const { id, formulas } of worksheets) {
      const { code, out } = await cli(['worksheet', 'describe', id]);
      expect(code).toBe(EXIT.done);
      for (const formula of formulas) expect(out).toContain(formula);
    }
  });

  test('an object gives an object: the result with its figures beside it', async () => {
    const { code, out, err } = await cli(['worksheet', 'run', sheet.id, '--json'], { stdin: example });
    expect({ code, err }).toEqual({ code: EXIT.done, err: '' });
    expect(JSON.parse(out).figures.length).toBeGreaterThan(0);
    for (const { path, value, tolerance } of sheet.example.expected) {
      const found = path.split('.').reduce((at, key) => at[key], JSON.parse(out));
      expect(Math.abs(found - value)).toBeLessThanOrEqual(tolerance);
    }
  });

  test('a list gives a list, and a refused input does not stop the others', async () => {
    const { code, out } = await cli(['worksheet', 'run', sheet.id, '--json'], {
      stdin: `[${example},\n {"nonsense": 1}, ${example}]`,
    });
    const results = JSON.parse(out);
    expect(code).toBe(EXIT.badInput);
    expect(results).toHaveLength(3);
    expect(results[0]).toEqual(results[2]);
    expect(results[1].issues).toContainEqual(
      expect.objectContaining({ code: 'unknown-key', path: '[1].nonsense', line: 2 }),
    );
  });

  test('an empty list gives an empty list', async () => {
    const { code, out } = await cli(['worksheet', 'run', sheet.id, '--json'], { stdin: '[]' });
    expect({ code, results: JSON.parse(out) }).toEqual({ code: EXIT.done, results: [] });
  });

  test('for people: figures, with their working when asked', async () => {
    const file = join(room, 'input.json');
    writeFileSync(file, example);
    const brief = await cli(['worksheet', 'run', sheet.id, file]);
    const full = await cli(['worksheet', 'run', sheet.id, file, '--working']);
    expect(brief.out).not.toContain('source:');
    expect(full.out).toContain('source:');
  });

  test.each([
    [['worksheet', 'run', `${sheet.id}x`], '{}', EXIT.usage, `did you mean ${sheet.id}?`],
    [['worksheet', 'describe', 'zzzzzzzzzzzz'], '', EXIT.usage, 'worksheet list'],
    [['worksheet', 'run', sheet.id], '{,}', EXIT.badInput, 'line 1, column 2'],
    [['worksheet', 'run', sheet.id], '', EXIT.badInput, 'the text is empty'],
  ])('%j with %s', async (argv, stdin, code, says) => {
    const ran = await cli(argv, { stdin });
    expect(ran.code).toBe(code);
    expect(ran.err).toContain(says);
  });
});

describe('the rest', () => {
  test('help names each verb and each exit code; help on each verb', async () => {
    const { out } = await cli(['help']);
    for (const verb of ['check', 'pack', 'new', 'schema', 'worksheet']) {
      expect(out).toContain(`jigwright ${verb}`);
      expect((await cli(['help', verb])).out).toContain(`jigwright ${verb}`);
    }
    for (const code of Object.values(EXIT)) expect(out).toMatch(new RegExp(`(^|\\s)${code}  `, 'm'));
    expect((await cli(['help', 'nothing'])).code).toBe(EXIT.usage);
  });

  test('a fault of the program has its own exit code and is not blamed on the file', async () => {
    const core = {
      ...coreWith(),
      solve: () => {
        throw new Error('broken');
      },
    };
    const { code, err } = await cli(['check', buildFile()], { core });
    expect(code).toBe(EXIT.fault);
    expect(err).toContain('not of your file');
  });

  test('progress is silent for half a second, then tells now and then', () => {
    let now = 0;
    let err = '';
    const terminal = {
      out: () => {},
      err: (text: string) => {
        err += text;
      },
      readStdin: async () => '',
      now: () => now,
      today: () => '',
      readFonts,
    };
    const tell = startProgress(terminal);
    for (now = 0; now <= 1000; now += 100) tell(`step at ${now}`);
    expect(err.match(/step at \d+/g)).toEqual(['step at 500', 'step at 800']);
  });
});
