import { describe, expect, test } from 'vitest';
import { demoDrawing, demoNames, drawingOf } from '../../../../tests/support/demoScene.ts';
import { meetingTexts, outsideMargins, texts } from '../../../../tests/support/sheetChecks.ts';
import { smallBuild } from '../../../../tests/support/smallBuild.ts';
import { printQuantity } from '../../quantity/index.ts';
import {
  isWear,
  movedText,
  type SlowStrength,
  type Strength,
  slowStrength,
  strengthOf,
} from '../../strength/index.ts';
import { finishBook } from '../bookPages.ts';
import type { Sheet } from '../sheet.ts';
import { missingCharacters } from '../textMetrics.ts';
import type { DrawingContext } from './context.ts';
import { recast } from './strength/strengthWords.ts';
import { strengthSheets } from './strengthSheets.ts';

const systems = ['both', 'mm', 'in'] as const;

const chapter = (context: DrawingContext, strength: Strength, shaking?: SlowStrength): readonly Sheet[] =>
  finishBook(strengthSheets(context, strength, shaking), {
    bike: 'bike',
    date: '2026-01-02',
    units: 'mm over in',
  });

const said = (sheets: readonly Sheet[]): string =>
  sheets.flatMap((sheet) => texts(sheet.items).map((one) => one.text)).join(' ');

describe.each(demoNames)('strength chapter of the %s demo', (name) => {
  const { context } = demoDrawing(name);
  const strength = strengthOf(context.scene);
  const shaking = slowStrength(strength, context.scene.build);
  const chapters = new Map(
    systems.map((system) => [system, chapter({ ...context, system }, strength, shaking)]),
  );
  const all = systems.flatMap((system) =>
    chapters.get(system)!.map((sheet) => [`${system} ${sheet.id}`, sheet] as const),
  );

  test.each(all)(
    '%s: no two texts share paper, all lies within the margins, letters are legible',
    (_, sheet) => {
      expect(meetingTexts(sheet)).toEqual([]);
      expect(outsideMargins(sheet)).toEqual([]);
      const small = texts(sheet.items).filter((one) => one.size < 2.5 && one.at.y > 7 + 12);
      expect(small.map((one) => one.text)).toEqual([]);
      expect(missingCharacters(said([sheet]))).toEqual([]);
    },
  );

  test('every page has a name of its own, and the same strength gives the same pages', () => {
    const pages = chapters.get('both')!;
    expect(new Set(pages.map((page) => page.id)).size).toBe(pages.length);
    expect(JSON.stringify(chapter({ ...context, system: 'both' }, strength, shaking))).toBe(
      JSON.stringify(pages),
    );
  });

  test('the worst place, the largest moment of each shaft and each remedy are on the pages as worked out', () => {
    const words = said(chapters.get('mm')!);
    expect(words).toContain(`${(100 * strength.worst[0]!.utilization).toFixed(0)} %`);
    for (const { solution } of [...strength.drive.shafts, ...strength.axles])
      expect(words).toContain(printQuantity(solution.maxMoment.value, 'torque', 'mm'));
    for (const { utilization } of strength.remedies)
      expect(words).toContain(`${(100 * utilization).toFixed(0)} %`);
    for (const left of strength.notChecked) expect(words).toContain(left.split(/\s+/)[1]);
  });

  test('what is over a rating of wear is told apart from what breaks', () => {
    const words = said(chapters.get('mm')!);
    const wears = strength.rows.filter((row) => isWear(row) && row.utilization > 1);
    expect(words.includes('Over a rating of wear')).toBe(wears.length > 0);
    for (const { utilization } of wears)
      expect(words).toContain(`${(100 * utilization).toFixed(0)} % of the rating used`);
  });

  test('a shaft is shown with and without an outboard bearing, and which of the two is tried', () => {
    const words = said(chapters.get('mm')!);
    const compared = strength.drive.shafts.flatMap(({ outboard }) => (outboard ? [outboard] : []));
    expect(words.includes('What the outboard bearing brings')).toBe(compared.some((one) => one.isThere));
    expect(words.includes('What an outboard bearing would bring')).toBe(compared.some((one) => !one.isThere));
    for (const { without } of compared)
      expect(words).toContain(printQuantity(without.maxMoment, 'torque', 'mm'));
  });

  test('each frequency is told with what moves, and the engine speeds that drive it', () => {
    const words = said(chapters.get('mm')!);
    for (const { angularFrequency, moved, driven } of shaking.frequencies) {
      expect(words).toContain(`${(angularFrequency / (2 * Math.PI)).toFixed(1)} Hz`);
      expect(words).toContain(movedText(moved));
      for (const speed of [driven.firing, driven.turning])
        if (speed !== undefined) expect(words).toContain(printQuantity(speed, 'angularSpeed', 'mm'));
    }
    expect(words).toContain(`${Number(shaking.buckling!.factor.toPrecision(2))} times`);
  });

  test('one system is asked for, one is printed', () => {
    // Published figures and names of stock keep the units that they were published in.
    const found = (system: 'mm' | 'in', pattern: RegExp): string | undefined =>
      said(chapters.get(system)!)
        .replaceAll(/1000 to 1200 N|1 in stem|\d in bore/g, '')
        .match(pattern)?.[0];
    expect(found('mm', /\d[ \u00a0](lbf|psi|in|lb-ft)\b/)).toBeUndefined();
    expect(found('in', /\d[ \u00a0](N|N·m|mm|MPa|km)\b/)).toBeUndefined();
  });

  test('no page promises anything', () => {
    const words = said(chapters.get('both')!).toLowerCase();
    // The published name of the ratio C0/P0 is a term, not a verdict.
    expect(words.replaceAll('static safety factor', '')).not.toMatch(/\bsafe(ly|ty)?\b/);
    expect(words).toContain('never a promise');
  });
});

test('a frame that could not be worked out still has its other pages and says what moves', () => {
  const { context } = drawingOf(smallBuild({}));
  const { results: _, stiffness: __, ...rest } = strengthOf(context.scene);
  const bare: Strength = {
    ...rest,
    welds: [],
    buckling: [],
    worst: [],
    rows: [],
    remedies: [],
    flaws: [{ rule: 'mechanism', part: 'neck', reason: 'it turns freely about its upper end' }],
  };
  const pages = chapter(context, bare);
  expect(pages.flatMap(meetingTexts)).toEqual([]);
  expect(pages.flatMap(outsideMargins)).toEqual([]);
  expect(said(pages)).toContain('it turns freely about its upper end');
});

test('sentences of the check are put into inches and pounds', () => {
  const { context } = drawingOf(smallBuild({}));
  const inch = { ...context, system: 'in' as const };
  expect(recast(inch, 'leg 25.4 mm')).toBe('leg 1.00 in');
  expect(recast(inch, 'Make it of 2.77 mm (0.109 in) wall')).toBe('Make it of 0.109 in wall');
  expect(recast({ ...context, system: 'mm' }, 'Make it of 2.77 mm (0.109 in) wall')).toBe(
    'Make it of 2.77 mm wall',
  );
});
