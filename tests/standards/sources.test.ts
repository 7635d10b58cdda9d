import { readdirSync, readFileSync } from 'node:fs';
import { join } from 'node:path';
import { fileURLToPath } from 'node:url';
import { describe, expect, test } from 'vitest';

const ROOT = fileURLToPath(new URL('../..', import.meta.url));
const read = (path: string): string => readFileSync(join(ROOT, path), 'utf8');
const listed: Readonly<Record<string, { readonly title?: unknown }>> = JSON.parse(read('data/sources.json'));
const keys = new Set(Object.keys(listed));
const tables = readdirSync(join(ROOT, 'data/standards')).filter((name) => name.endsWith('.json'));
const scripts = (folder: string): readonly string[] =>
  readdirSync(join(ROOT, folder), { recursive: true, encoding: 'utf8' })
    .filter((name) => /\.tsx?$/.test(name))
    .map((name) => join(folder, name));
const code = scripts('src').filter((name) => !name.includes('.test.'));

/** Every { key, where } within a JSON value. */
function references(value: unknown): { readonly key: unknown; readonly where: unknown }[] {
  if (typeof value !== 'object' || value === null) return [];
  const inner = Object.values(value).flatMap(references);
  return 'key' in value && 'where' in value ? [{ key: value.key, where: value.where }, ...inner] : inner;
}

/** Keys named in files by a pattern's first group, with the file, less those that are listed. */
function unlisted(files: readonly string[], pattern: RegExp): readonly { name: string; key: string }[] {
  const used = files.flatMap((name) =>
    [...read(name).matchAll(pattern)].map((match) => ({ name, key: match[1] ?? '' })),
  );
  expect(used.length).toBeGreaterThan(0);
  return used.filter(({ key }) => !keys.has(key));
}

describe('sources', () => {
  test('there are tables to look at', () => {
    expect(tables.length).toBeGreaterThan(0);
  });

  test.each(tables)('%s names sources, and only listed ones, each with its place', (name) => {
    const found = references(JSON.parse(read(`data/standards/${name}`)));
    expect(found.length).toBeGreaterThan(0);
    expect(found.filter(({ key }) => !keys.has(String(key)))).toEqual([]);
    expect(found.filter(({ where }) => typeof where !== 'string' || where === '')).toEqual([]);
  });

  test('the code names only listed sources', () => {
    expect(unlisted(code, /key: '([a-z0-9-]+)',\s*where:/g)).toEqual([]);
  });

  test('so do the comments of the code', () => {
    expect(unlisted(code, /@source ([a-z0-9-]+)/g)).toEqual([]);
  });

  test('every listed source has a title', () => {
    const untitled = Object.entries(listed).filter(
      ([, { title }]) => typeof title !== 'string' || title === '',
    );
    expect(untitled).toEqual([]);
  });

  test('every listed source is named by code, a table or a check', () => {
    const texts = [
      ...[...code, ...scripts('tests')].map(read),
      ...tables.map((name) => read(`data/standards/${name}`)),
      read('data/font-widths.json'),
    ].join('\n');
    const named = (key: string): boolean => new RegExp(`(?<![\\w-])${key}(?![\\w-])`).test(texts);
    expect([...keys].filter((key) => !named(key))).toEqual([]);
  });
});
