import { readdirSync, readFileSync } from 'node:fs';
import { builtinModules } from 'node:module';
import { dirname, join, normalize, relative, sep } from 'node:path';
import { parseSync } from 'vite';
import { ROOM_RULES, type RoomRule, SCREEN_LIBRARIES } from './rooms.ts';

/** One import or re-export, types included: a type that points the wrong way is a wrong direction too. */
export interface Import {
  /** Path from the root of the repository, with `/`. */
  readonly from: string;
  /** Path from the root for a relative import, else the module's name. */
  readonly to: string;
  readonly relative: boolean;
  readonly line: number;
}

export interface Breach {
  readonly rule: string;
  readonly file: string;
  readonly line: number;
  readonly what: string;
  readonly why: string;
}

interface SourceFile {
  readonly path: string;
  readonly text: string;
}

/** All TypeScript files under `root/folder`. */
export function sourceFiles(root: string, folder: string): SourceFile[] {
  return readdirSync(join(root, folder), { recursive: true, withFileTypes: true })
    .filter((entry) => entry.isFile() && /\.(ts|tsx)$/.test(entry.name))
    .map((entry) => join(entry.parentPath, entry.name))
    .map((path) => ({ path: relative(root, path).split(sep).join('/'), text: readFileSync(path, 'utf8') }));
}

/** Every breach of the rules in `files`; paths decide which rules hold. */
export function lintImports(files: readonly SourceFile[]): Breach[] {
  const imports = files.flatMap(importsOf);
  return [...imports.flatMap(breachesOf), ...files.flatMap(textBreaches), ...cycles(imports)];
}

/** Static imports, re-exports and dynamic imports with a literal name. */
export function importsOf(file: SourceFile): Import[] {
  const parsed = parseSync(file.path, file.text);
  if (parsed.errors.length > 0) throw new Error(`${file.path}: ${parsed.errors[0]?.message}`);
  const { staticImports, staticExports, dynamicImports } = parsed.module;
  const requests = [
    ...staticImports.map((one) => one.moduleRequest),
    ...staticExports.flatMap((one) => one.entries.flatMap((entry) => entry.moduleRequest ?? [])),
    ...dynamicImports.map((one) => one.moduleRequest),
  ];
  const seen = new Set<number>();
  return requests.flatMap((request) => {
    const literal = /^(['"`])(.*)\1$/.exec(file.text.slice(request.start, request.end))?.[2];
    if (literal === undefined || seen.has(request.start)) return [];
    seen.add(request.start);
    const isRelative = literal.startsWith('.');
    const to = isRelative
      ? normalize(join(dirname(file.path), literal))
          .split(sep)
          .join('/')
      : literal;
    const line = file.text.slice(0, request.start).split('\n').length;
    return [{ from: file.path, to, relative: isRelative, line }];
  });
}

const isTest = (path: string): boolean => /\.test\.tsx?$/.test(path);
const coreRoom = (path: string): string | undefined => /^src\/core\/([^/]+)\//.exec(path)?.[1];
const inCore = (path: string): boolean => path.startsWith('src/core/');

function breachesOf(one: Import): Breach[] {
  const breach = (rule: string, why: string): Breach[] => [
    { rule, file: one.from, line: one.line, what: `imports ${one.to}`, why },
  ];
  if (!one.relative) return inCore(one.from) && !isTest(one.from) ? outsideBreaches(one, breach) : [];
  const target = coreRoom(one.to);
  const own = coreRoom(one.from);
  if (target !== undefined && target !== own && one.to !== `src/core/${target}/index.ts`) {
    return breach(
      'through-index',
      "A room's index.ts is its face; what it does not show may change at any time.",
    );
  }
  if (isTest(one.from)) return [];
  if (inCore(one.from)) return coreBreaches(one, own, target, breach);
  return shellBreaches(one, breach);
}

type MakeBreach = (rule: string, why: string) => Breach[];

function outsideBreaches(one: Import, breach: MakeBreach): Breach[] {
  if (one.to.startsWith('node:') || builtinModules.includes(one.to)) {
    return breach(
      'core-is-pure',
      'The core runs in a browser, a worker and a test alike: no file, clock or process.',
    );
  }
  const library = SCREEN_LIBRARIES.find((name) => one.to === name || one.to.startsWith(`${name}/`));
  return library === undefined
    ? []
    : breach('core-has-no-screen', 'The core makes data; only the app shows it.');
}

function coreBreaches(
  one: Import,
  own: string | undefined,
  target: string | undefined,
  breach: MakeBreach,
): Breach[] {
  if (!one.to.startsWith('src/')) {
    return one.to.startsWith('data/')
      ? []
      : breach('core-stands-alone', 'The core reads its own tables and nothing else.');
  }
  if (!inCore(one.to)) return breach('core-stands-alone', 'The doors know the core; the core knows no door.');
  if (own === undefined || target === own) return [];
  if (target === undefined)
    return breach('rooms-are-below', 'The table of contents reads the rooms, not the reverse.');
  const rule = ruleOf(own);
  if (rule === undefined)
    return breach('unknown-room', `"${own}" is not in scripts/lint/rooms.ts: give it its place.`);
  return rule.mayImport.includes(target) ? [] : breach(`room-${own}`, rule.why);
}

function shellBreaches(one: Import, breach: MakeBreach): Breach[] {
  const door = /^src\/(cli|app)\//.exec(one.from)?.[1];
  const otherDoor = door === 'cli' ? 'src/app/' : 'src/cli/';
  if (door !== undefined && one.to.startsWith(otherDoor)) {
    return breach('two-doors', 'Each door stands alone, so that either can be taken out.');
  }
  return [];
}

function ruleOf(room: string): RoomRule | undefined {
  return ROOM_RULES.find((rule) => rule.room === room);
}

function textBreaches(file: SourceFile): Breach[] {
  const found: Breach[] = [];
  const check = (pattern: RegExp, rule: string, what: string, why: string): void => {
    const at = file.text.search(pattern);
    if (at >= 0)
      found.push({ rule, file: file.path, line: file.text.slice(0, at).split('\n').length, what, why });
  };
  check(
    /^export \*/m,
    'no-export-star',
    'export *',
    'A face is a list: a change to it must show in the diff.',
  );
  if (inCore(file.path) && !isTest(file.path)) {
    check(
      /\bMath\.random\b/,
      'core-is-pure',
      'Math.random',
      'The same input gives the same bike; pass a seeded generator.',
    );
  }
  if (/(^|\/)(utils?|common|misc|helpers)(\.tsx?$|\/)/.test(file.path)) {
    found.push({
      rule: 'named-for-its-idea',
      file: file.path,
      line: 1,
      what: 'file name',
      why: 'Name a file for its one idea.',
    });
  }
  return found;
}

/** One breach a cycle, by depth-first search; tests are leaves and can't be part of one. */
function cycles(imports: readonly Import[]): Breach[] {
  const next = new Map<string, string[]>();
  for (const one of imports) if (one.relative) next.set(one.from, [...(next.get(one.from) ?? []), one.to]);
  const state = new Map<string, 'open' | 'done'>();
  const found: Breach[] = [];
  const visit = (file: string, trail: readonly string[]): void => {
    if (state.get(file) === 'done') return;
    if (state.get(file) === 'open') {
      const ring = [...trail.slice(trail.indexOf(file)), file];
      const why = 'What imports itself in a ring has no order in which to read it.';
      found.push({ rule: 'no-cycle', file, line: 1, what: ring.join(' -> '), why });
      return;
    }
    state.set(file, 'open');
    for (const to of next.get(file) ?? []) visit(to, [...trail, file]);
    state.set(file, 'done');
  };
  for (const file of next.keys()) visit(file, []);
  return found;
}
