import { afterAll, beforeAll, expect, test } from 'vitest';
import { openApp, type ServedApp } from '../support/browser.ts';

let app: ServedApp;
beforeAll(async () => {
  app = await openApp();
});
afterAll(() => app.close());

test('the page opens without an error and asks nothing of another machine', async () => {
  const page = await app.browser.newPage();
  const errors: string[] = [];
  const elsewhere: string[] = [];
  page.on('pageerror', (error) => errors.push(error.message));
  page.on('console', (message) => {
    if (message.type() === 'error') errors.push(message.text());
  });
  page.on('request', (request) => {
    const { protocol } = new URL(request.url());
    if (!request.url().startsWith(app.address) && protocol !== 'blob:' && protocol !== 'data:')
      elsewhere.push(request.url());
  });
  await page.goto(app.address, { waitUntil: 'networkidle' });
  await page.getByRole('heading', { level: 1 }).waitFor();
  expect(await page.title()).toContain('Jigwright');
  expect({ errors, elsewhere }).toEqual({ errors: [], elsewhere: [] });
});
