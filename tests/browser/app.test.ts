import { readFileSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import type { Page } from 'playwright-core';
import { afterAll, beforeAll, expect, test } from 'vitest';
import { readBuild } from '../../src/core/index.ts';
import { drawnShare, entryOf, refused, showView, solved, visit } from '../support/appPage.ts';
import { openApp, type ServedApp } from '../support/browser.ts';

const demo = JSON.parse(readFileSync(new URL('../../demo/light.build.json', import.meta.url), 'utf8'));

let app: ServedApp;
beforeAll(async () => {
  app = await openApp();
});
afterAll(() => app.close());

const figure = (page: Page, id: string) => page.locator(`[data-figure="${id}"] .figure-value`);

test('the side view draws tires, tubes, engine, chains, plates, seat and rider', async () => {
  const { page, errors, close } = await visit(app);
  await page.locator('.drawing [data-part="wheels.rear"]').first().waitFor();
  const parts = await page
    .locator('.drawing [data-part]')
    .evaluateAll((items) => items.map((item) => item.getAttribute('data-part') ?? ''));
  for (const part of ['wheels.rear', 'wheels.front', 'engine', 'seating.seat', 'rider'])
    expect(parts, part).toContain(part);
  for (const tube of Object.keys(demo.frame.tubes)) expect(parts).toContain(`frame.tubes.${tube}`);
  for (const stage of demo.driveline.stages.filter((one: { kind: string }) => one.kind === 'chain'))
    expect(parts).toContain(`driveline.${stage.id}`);
  expect(parts.some((part) => part.startsWith('plates.'))).toBe(true);
  expect(errors).toEqual([]);
  await close();
});

test('the 3D view draws the bike, and goes round it by keys', async () => {
  const { page, errors, close } = await visit(app, 'solid');
  const canvas = page.locator('canvas[data-ready]');
  await canvas.waitFor();
  // A bike with rider fills about a fifth of the picture; a blank or broken one next to nothing.
  await expect.poll(() => drawnShare(page, canvas), { timeout: 20_000 }).toBeGreaterThan(0.04);
  const before = await canvas.screenshot();
  await page.locator('.solid').focus();
  for (let i = 0; i < 5; i++) await page.keyboard.press('ArrowRight');
  await expect.poll(async () => before.equals(await canvas.screenshot())).toBe(false);
  expect(errors).toEqual([]);
  await close();
});

test('a changed wheelbase changes the figures, tells what moved, and undo takes it back', async () => {
  const { page, errors, close } = await visit(app, 'figures');
  await expect.poll(() => figure(page, 'steering.design.wheelbase').textContent()).toContain('1030.0 mm');
  await entryOf(page, 'steering.wheelbase').fill('1100 mm');
  await expect.poll(() => figure(page, 'steering.design.wheelbase').textContent()).toContain('1100.0 mm');
  await showView(page, 'What changed');
  const change = page.locator('[data-change="steering.design.wheelbase"]');
  await expect.poll(() => change.textContent()).toMatch(/1030\.0 mm.*→.*1100\.0 mm/);
  await page.getByRole('button', { name: 'Undo' }).click();
  await solved(page);
  await showView(page, 'Figures');
  await expect.poll(() => figure(page, 'steering.design.wheelbase').textContent()).toContain('1030.0 mm');
  expect(await entryOf(page, 'steering.wheelbase').inputValue()).toBe(demo.steering.wheelbase);
  await page.getByRole('button', { name: 'Redo' }).click();
  await expect.poll(() => figure(page, 'steering.design.wheelbase').textContent()).toContain('1100.0 mm');
  expect(errors).toEqual([]);
  await close();
});

test('a wrong text is told at its field, and the last good drawing stays', async () => {
  const { page, close } = await visit(app);
  const tires = page.locator('.drawing [data-part="wheels.rear"]');
  await tires.first().waitFor();
  const count = await tires.count();
  const entry = entryOf(page, 'steering.wheelbase');
  await entry.fill('12 mn');
  await refused(page);
  expect(await page.locator('.verdict-errors').textContent()).toContain('steering.wheelbase');
  expect(await entry.getAttribute('aria-invalid')).toBe('true');
  const about = page.locator(`[id="${await entry.getAttribute('aria-describedby')}"]`);
  expect(await about.textContent()).toMatch(/found "12 mn", wanted a length/);
  expect(await tires.count()).toBe(count);
  expect(await page.locator('.tabs.is-old').count()).toBe(1);
  await page.getByRole('button', { name: 'Undo' }).click();
  await solved(page);
  expect(await entry.inputValue()).toBe(demo.steering.wheelbase);
  expect(await page.locator('.tabs.is-old').count()).toBe(0);
  await close();
});

test('any number of the file can be found by its name', async () => {
  const { page, close } = await visit(app);
  await page.getByRole('searchbox', { name: 'Find a number' }).fill('driven teeth');
  const stages: readonly { kind: string }[] = demo.driveline.stages;
  const index = stages.findIndex(({ kind }) => kind === 'chain');
  const entry = entryOf(page, `driveline.stages[${index}].drivenTeeth`);
  await entry.waitFor();
  expect(await entry.inputValue()).toBe(String(demo.driveline.stages[index].drivenTeeth));
  await close();
});

test('the saved file reads back as the edited build', async () => {
  const { page, close } = await visit(app);
  await entryOf(page, 'steering.wheelbase').fill('1042.5');
  await solved(page);
  const [download] = await Promise.all([
    page.waitForEvent('download'),
    page.getByRole('button', { name: 'Save', exact: true }).click(),
  ]);
  const text = readFileSync(await download.path(), 'utf8');
  expect(download.suggestedFilename()).toBe('light.build.json');
  expect(JSON.parse(text)).toEqual({ ...demo, steering: { ...demo.steering, wheelbase: 1042.5 } });
  expect(readBuild(text)).toMatchObject({ ok: true });
  await close();
});

test('a file from the disk opens; one that is no JSON is told with its place and changes nothing', async () => {
  const { page, close } = await visit(app);
  const mine = join(tmpdir(), `mine-${process.pid}.build.json`);
  const broken = join(tmpdir(), `broken-${process.pid}.build.json`);
  writeFileSync(mine, JSON.stringify({ ...demo, about: { ...demo.about, name: 'Shed special' } }));
  writeFileSync(broken, '{\n  "version": 1,\n  "about": {{\n}');
  const picker = page.locator('input[type=file]');
  await picker.setInputFiles(mine);
  await page.getByRole('heading', { level: 1, name: 'Shed special' }).waitFor();
  await solved(page);
  await picker.setInputFiles(broken);
  const alert = page.getByRole('alert');
  await alert.waitFor();
  expect(await alert.textContent()).toMatch(/was not opened: line 3, column/);
  expect(await page.getByRole('heading', { level: 1 }).textContent()).toBe('Shed special');
  await close();
});

test('a finding leads to its field, a part of the drawing to its own', async () => {
  const { page, close } = await visit(app, 'findings');
  const go = page.getByRole('button', { name: /^Go to / }).first();
  const path = (await go.textContent())?.replace('Go to ', '') ?? '';
  await go.click();
  const focused = () => page.evaluate(() => document.activeElement?.id ?? '');
  await expect.poll(focused).toBe(`field:${path}`);
  await showView(page, 'Side view');
  await page.locator('.drawing [data-part="wheels.front"]').first().waitFor();
  // The tire's lower edge: nothing lies before it there.
  const box = await page.locator('.drawing [data-part="wheels.front"]').first().boundingBox();
  if (!box) throw new Error('the front wheel has no place on the screen');
  await page.mouse.click(box.x + box.width / 2, box.y + box.height * 0.97);
  await expect.poll(focused).toBe('field:wheels.front');
  await close();
});

test('edits are still there after the page is loaded again', async () => {
  const { page, close } = await visit(app);
  await entryOf(page, 'steering.wheelbase').fill('1111 mm');
  await solved(page);
  await page.reload();
  await solved(page);
  expect(await entryOf(page, 'steering.wheelbase').inputValue()).toBe('1111 mm');
  await close();
});

test('every demo opens and is solved, also one that is open', async () => {
  const { page, errors, close } = await visit(app);
  const names = await page
    .locator('.demo-picker optgroup option')
    .evaluateAll((options) => options.map((option) => (option as HTMLOptionElement).value));
  expect(names.length).toBeGreaterThanOrEqual(2);
  // The last one is opened again while it is open.
  for (const name of [...names, names.at(-1)!]) {
    await page.locator('.demo-picker').selectOption(name);
    const { about } = JSON.parse(readFileSync(new URL(`../../demo/${name}`, import.meta.url), 'utf8'));
    await page.getByRole('heading', { level: 1, name: about.name }).waitFor();
    await solved(page);
    await page.locator('.drawing [data-part="wheels.rear"]').first().waitFor();
  }
  expect(errors).toEqual([]);
  await close();
});

test('the sheets of the pack are listed and drawn', async () => {
  const { page, errors, close } = await visit(app, 'sheets');
  const sheet = page.locator('.drawing.is-paper svg');
  await sheet.waitFor();
  expect(await page.locator('select[aria-label="Sheet"] option').count()).toBeGreaterThan(5);
  const title = await sheet.locator('title').textContent();
  await page.getByRole('button', { name: 'Next sheet' }).click();
  await expect.poll(() => sheet.locator('title').textContent()).not.toBe(title);
  expect(errors).toEqual([]);
  await close();
});
