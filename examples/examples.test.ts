import { expect, test } from 'vitest';
import { runAWorksheet } from './runAWorksheet.ts';
import { solveABuild } from './solveABuild.ts';

// After a change that means to move them: npx vitest run examples --update
test('a solved build prints what is written down', async () => {
  await expect(solveABuild()).toMatchFileSnapshot('solveABuild.txt');
});

test('a worksheet prints what is written down', async () => {
  await expect(runAWorksheet()).toMatchFileSnapshot('runAWorksheet.txt');
});

test('and that is what the published worked example says: 128.67 links at 545 mm, 128 at 540.6, 130 at 553.7', () => {
  const text = runAWorksheet();
  // The source counts to 0.02 links and 0.1 mm, by the handbook's closed form.
  const [, links] = /([\d.]+) links, not rounded/.exec(text) ?? [];
  expect(Math.abs(Number(links) - 128.67)).toBeLessThan(0.02);
  for (const [count, center] of [
    [128, 540.6],
    [130, 553.7],
  ] as const) {
    const [, found] = new RegExp(`${count} links: ([\\d.]+) mm`).exec(text) ?? [];
    expect(Math.abs(Number(found) - center)).toBeLessThan(0.1);
  }
});
