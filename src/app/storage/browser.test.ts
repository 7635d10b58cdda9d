import { expect, test } from 'vitest';
import { fileText, keep, recall } from './browser.ts';

function storage(entries: Record<string, string> = {}, isFull = false): Storage {
  return {
    getItem: (key: string) => entries[key] ?? null,
    setItem: (key: string, value: string) => {
      if (isFull) throw new Error('full');
      entries[key] = value;
    },
  } as Storage;
}

const kept = { name: 'a.build.json', file: { version: 1, wheels: { rear: '13 in' } }, units: 'in' } as const;

test('what was kept is recalled', () => {
  const shed = storage();
  expect(recall(shed)).toEqual({ state: 'none' });
  expect(keep(shed, kept)).toBe(true);
  expect(recall(shed)).toEqual({ state: 'found', kept });
});

test('a newer form is neither read nor written over', () => {
  const entries = { 'jigwright.last': '{"version":2,"name":"x","file":{}}' };
  const shed = storage(entries);
  expect(recall(shed)).toMatchObject({ state: 'unreadable' });
  expect(keep(shed, kept)).toBe(false);
  expect(entries['jigwright.last']).toContain('"version":2');
});

test.each(['{', '3', '{"version":1}', '{"version":1,"name":"x","file":[]}', '{"name":"x","file":{}}'])(
  'damaged: %s',
  (text) => {
    expect(recall(storage({ 'jigwright.last': text }))).toMatchObject({ state: 'unreadable' });
  },
);

test('a full storage is told, not thrown', () => {
  expect(keep(storage({}, true), kept)).toBe(false);
});

test('the text of a file reads back to the same value', () => {
  expect(JSON.parse(fileText(kept.file))).toEqual(kept.file);
});
