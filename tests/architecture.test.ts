import { readFileSync, readdirSync, statSync } from 'node:fs';
import { dirname, join, relative, resolve } from 'node:path';
import { describe, expect, test } from 'vitest';

const ROOT = resolve(import.meta.dirname, '..');

/**
 * Which folder may import from which, beside itself. A name ending in `/` is a folder of the project,
 * anything else a package. `src-shared/geometry/` and the like are written from the project's root.
 */
const LAYERS: Readonly<Record<string, readonly string[]>> = {
  'src-shared/units': [],
  'src-shared/geometry': ['clipper2-ts'],
  'src-shared/profile': ['src-shared/units/', 'src-shared/geometry/', 'zod'],
  'src-shared/model': ['src-shared/geometry/', 'src-shared/profile/', 'src-shared/units/', 'zod', 'fflate'],
  'src-shared/underlay': ['src-shared/geometry/', 'src-shared/model/', 'fflate'],
  'src-shared/commands': ['src-shared/geometry/', 'src-shared/model/', 'src-shared/profile/', 'src-shared/units/', 'src-shared/rules/finding.ts', 'immer'],
  'src-shared/derived': ['src-shared/geometry/', 'src-shared/model/', 'src-shared/profile/', 'src-shared/units/', 'rbush', 'clipper2-ts'],
  'src-shared/isometric': ['src-shared/geometry/', 'src-shared/units/', 'src-shared/model/', 'src-shared/profile/', 'src-shared/derived/', 'src-shared/calculations/'],
  'src-shared/elevation': ['src-shared/geometry/', 'src-shared/model/', 'src-shared/derived/'],
  'src-shared/calculations': ['src-shared/geometry/', 'src-shared/units/', 'src-shared/derived/', 'src-shared/profile/', 'src-shared/model/', 'src-shared/isometric/straight-runs.ts'],
  'src-shared/take-off': ['src-shared/geometry/', 'src-shared/units/', 'src-shared/model/', 'src-shared/profile/', 'src-shared/derived/', 'src-shared/calculations/', 'src-shared/isometric/straight-runs.ts'],
  'src-shared/paper': ['src-shared/model/'],
  'src-shared/assumptions': ['src-shared/model/', 'src-shared/derived/', 'src-shared/calculations/', 'src-shared/units/'],
  'src-shared/rules': ['src-shared/paper/', 'src-shared/geometry/', 'src-shared/model/', 'src-shared/profile/', 'src-shared/derived/', 'src-shared/calculations/', 'src-shared/take-off/', 'src-shared/isometric/straight-runs.ts', 'src-shared/units/'],
  'src-shared/why': ['src-shared/geometry/', 'src-shared/model/', 'src-shared/derived/', 'src-shared/rules/', 'src-shared/units/'],
  'src-shared/margins': [
    'src-shared/geometry/',
    'src-shared/model/',
    'src-shared/profile/',
    'src-shared/derived/',
    'src-shared/calculations/',
    'src-shared/take-off/',
    'src-shared/rules/',
    'src-shared/commands/',
    'src-shared/units/',
    'src-shared/live.ts',
  ],
  'src-shared/site': [
    'src-shared/geometry/',
    'src-shared/model/',
    'src-shared/profile/',
    'src-shared/derived/',
    'src-shared/calculations/',
    'src-shared/rules/',
    'src-shared/margins/',
    'src-shared/commands/',
    'src-shared/take-off/',
    'src-shared/units/',
    'src-shared/evaluate.ts',
    'src-shared/live.ts',
  ],
  'src-shared/revisions': ['src-shared/geometry/', 'src-shared/model/', 'src-shared/profile/', 'src-shared/units/'],
  'src-shared/sheets': [
    'src-shared/revisions/',
    'src-shared/paper/',
    'src-shared/geometry/',
    'src-shared/model/',
    'src-shared/profile/',
    'src-shared/derived/',
    'src-shared/calculations/',
    'src-shared/isometric/',
    'src-shared/elevation/',
    'src-shared/take-off/',
    'src-shared/rules/',
    'src-shared/margins/',
    'src-shared/assumptions/',
    'src-shared/units/',
    'src-shared/underlay/',
    'src-shared/evaluate.ts',
    'src-shared/site/',
    'rbush',
  ],
  'src-shared/ways-out': [
    'src-shared/sheets/',
    'src-shared/derived/',
    'src-shared/model/',
    'src-shared/geometry/',
    'src-shared/units/',
    'src-shared/take-off/',
    'src-shared/profile/',
    'src-shared/paper/',
    'src-shared/isometric/fitting-sign.ts',
    'src-shared/workbook/',
    'src-shared/underlay/drawing.ts',
    'src-shared/underlay/placement.ts',
    'src-shared/evaluate.ts',
    'src-shared/rules/',
    'src-shared/margins/field-room.ts',
    'fflate',
  ],
  'src-shared/workbook': ['src-shared/units/', 'src-shared/model/', 'src-shared/derived/', 'src-shared/take-off/', 'src-shared/sheets/', 'fflate'],
  'src-shared/host': ['src-shared/model/', 'src-shared/site/field-entries.ts', 'src-shared/profile/', 'src-shared/underlay/', 'zod', 'fflate'],
  'src-shared': ['src-shared/model/', 'src-shared/derived/', 'src-shared/calculations/', 'src-shared/rules/'],

  'src-main/demos': ['src-shared/', 'node:', 'pdfkit'],
  'src-main/services': ['src-shared/', 'src-main/demos/', 'node:', 'pdfkit', 'pdfjs-dist', '@cantoo/pdf-lib', 'fflate'],
  'src-main/cli': ['src-shared/', 'src-main/services/', 'src-main/demos/', 'node:', 'commander'],
  'src-main/loopback': ['src-shared/host/', 'src-main/services/', 'node:'],
  'src-main/electron': ['src-shared/host/', 'src-main/services/', 'node:', 'electron'],
  'src-main/launch': ['node:', 'src-main/loopback/browsers.mjs'],

  'src-renderer/store': ['src-shared/', 'src-renderer/tools/', 'src-renderer/plan-words.ts', 'react'],
  'src-renderer/tools': ['src-shared/', 'src-renderer/store/', 'src-renderer/plan-words.ts', 'rbush'],
  'src-renderer/host': ['src-shared/host/', 'src-renderer/store/'],
  'src-renderer/styles': ['src-renderer/ink.ts'],
  'src-renderer/actions': ['src-shared/', 'src-renderer/store/', 'src-renderer/tools/', 'src-renderer/host/', 'src-renderer/canvas/viewport.ts', 'src-renderer/plan-words.ts'],
  'src-renderer/input': ['src-shared/', 'src-renderer/store/', 'src-renderer/tools/', 'src-renderer/canvas/', 'src-renderer/plan-words.ts', 'react'],
  'src-renderer/canvas': [
    'src-shared/',
    'src-renderer/store/',
    'src-renderer/tools/',
    'src-renderer/input/',
    'src-renderer/ink.ts',
    'src-renderer/plan-words.ts',
    'react',
    'react-dom',
    'konva',
    'react-konva',
    'rbush',
  ],
  'src-renderer/panels': [
    'src-shared/',
    'src-renderer/store/',
    'src-renderer/tools/',
    'src-renderer/actions/',
    'src-renderer/canvas/',
    'src-renderer/input/',
    'src-renderer/host/',
    'src-renderer/ink.ts',
    'src-renderer/plan-words.ts',
    'react',
    'react-dom',
  ],
  'src-renderer': ['src-shared/', 'src-renderer/', 'react', 'react-dom'],
};

function filesBelow(folder: string): string[] {
  return readdirSync(join(ROOT, folder)).flatMap((name) => {
    const path = `${folder}/${name}`;
    if (statSync(join(ROOT, path)).isDirectory()) return filesBelow(path);
    return /\.(ts|tsx|mjs)$/.test(name) ? [path] : [];
  });
}

const SOURCES = ['src-shared', 'src-main', 'src-renderer'].flatMap(filesBelow);
const textOf = (path: string): string => readFileSync(join(ROOT, path), 'utf8');

/** The row of the table that a file falls under: its longest matching folder. */
const rowOf = (path: string): string | undefined =>
  Object.keys(LAYERS)
    .filter((folder) => path.startsWith(`${folder}/`))
    .sort((a, b) => b.length - a.length)[0];

const IMPORT = /(?:^|\n)\s*(?:import|export)\s[^;'"]*?from\s*['"]([^'"]+)['"]|(?:^|\n)\s*import\s*['"]([^'"]+)['"]|import\(\s*['"]([^'"]+)['"]\s*\)/g;

/** What a file imports, project files from the root with `/` behind folders left out. */
const importsOf = (path: string): string[] =>
  [...textOf(path).matchAll(IMPORT)].map(([, from, bare, dynamic]) => {
    const name = from ?? bare ?? dynamic ?? '';
    if (name.startsWith('#shared/')) return `${name.replace('#shared/', 'src-shared/')}.ts`;
    if (name.startsWith('.')) return relative(ROOT, resolve(ROOT, dirname(path), name));
    return name;
  });

const packageOf = (name: string): string => name.split('/').slice(0, name.startsWith('@') ? 2 : 1).join('/');

describe('layers', () => {
  test('every source file falls under a row of the table', () => {
    const strays = SOURCES.filter((path) => {
      const row = rowOf(path);
      return !row || (row.split('/').length === 1 && path.split('/').length > 2);
    });
    expect(strays).toEqual([]);
  });

  test('a file imports only from its own folder and from what its row names', () => {
    const offenders = SOURCES.flatMap((path) => {
      const row = rowOf(path) ?? '';
      const allowed = LAYERS[row] ?? [];
      return importsOf(path)
        .filter((name) => {
          if (name.startsWith('src-')) {
            const isOwn = rowOf(name) === row;
            return !isOwn && !allowed.some((each) => (each.endsWith('/') ? name.startsWith(each) : name === each));
          }
          if (name.startsWith('node:')) return !allowed.includes('node:');
          if (/\.(css|ttf|svg|json)(\?.*)?$/.test(name)) return false;
          return !allowed.includes(packageOf(name));
        })
        .map((name) => `${path} imports ${name}`);
    });
    expect(offenders).toEqual([]);
  });

  test('the shared layer has no clock and no chance: ids and time are arguments', () => {
    const offenders = SOURCES.filter((path) => path.startsWith('src-shared/')).filter((path) =>
      /Math\.random|Date\.now|new Date\(|performance\.now|crypto\.randomUUID/.test(textOf(path)),
    );
    expect(offenders).toEqual([]);
  });

  test('there are no default exports and no catch-all folders', () => {
    const offenders = SOURCES.filter((path) => /(^|\n)export default/.test(textOf(path)) || /\/(utils?|helpers?|common|misc)[./]/.test(path));
    expect(offenders).toEqual([]);
  });
});

describe('registries', () => {
  const files = (folder: string, pattern: RegExp): string[] => SOURCES.filter((path) => path.startsWith(folder) && pattern.test(path));

  test('every rule stands in the index', () => {
    const index = textOf('src-shared/rules/index.ts');
    const missing = files('src-shared/rules/', /\/[a-z]\d\d-[a-z0-9-]+\.ts$/).filter((path) => !index.includes(path.replace('src-shared/rules/', './')));
    expect(missing).toEqual([]);
  });

  test('every rule, command and formula has a test beside it', () => {
    const tests = filesBelow('tests').filter((path) => path.endsWith('.test.ts')).map((path) => textOf(path)).join('\n');
    const subjects = [
      ...files('src-shared/rules/', /\/[a-z]\d\d-[a-z0-9-]+\.ts$/),
      ...files('src-shared/commands/', /\.ts$/),
      ...files('src-shared/calculations/formulas/', /\.ts$/),
    ];
    const untested = subjects.filter((path) => {
      const module = path.replace('src-shared/', '#shared/').replace(/\.ts$/, '');
      return !tests.includes(`'${module}'`);
    });
    expect(untested).toEqual([]);
  });
});
