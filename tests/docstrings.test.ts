import { readFileSync, readdirSync, statSync } from 'node:fs';
import { join, resolve } from 'node:path';
import { describe, expect, test } from 'vitest';

const ROOT = resolve(import.meta.dirname, '..');

const filesBelow = (folder: string): string[] =>
  readdirSync(join(ROOT, folder)).flatMap((name) => {
    const path = `${folder}/${name}`;
    if (statSync(join(ROOT, path)).isDirectory()) return filesBelow(path);
    return name.endsWith('.ts') ? [path] : [];
  });

const FILES = filesBelow('src-shared').map((path) => ({ path, text: readFileSync(join(ROOT, path), 'utf8') }));

interface Exported {
  readonly path: string;
  readonly name: string;
  readonly doc: string;
  readonly head: string;
}

/** Exported functions with the docstring right above them. */
const FUNCTIONS: Exported[] = FILES.flatMap(({ path, text }) =>
  [...text.matchAll(/(\/\*\*(?:(?!\*\/)[\s\S])*\*\/\s*)?(?:\/\/[^\n]*\n)*export (?:async )?(?:function\*? (\w+)|const (\w+)(?::[^=\n]+)? =\s*(?:async )?(?:<[^>]*>)?\s*\()(?=([^{]*))/g)].map(
    ([, doc = '', byFunction, byConst, head = '']) => ({ path, name: byFunction ?? byConst ?? '', doc, head }),
  ),
);

describe('docstrings of the shared layer', () => {
  test('every exported function says what it is', () => {
    expect(FUNCTIONS.length).toBeGreaterThan(100);
    expect(FUNCTIONS.filter(({ doc }) => doc === '').map(({ path, name }) => `${path}: ${name}`)).toEqual([]);
  });

  test('a formula names every parameter in its docstring, with its unit, and states its basis', () => {
    const formulas = FUNCTIONS.filter(({ path }) => path.includes('/calculations/formulas/') && !path.endsWith('/checked.ts'));
    const faults = formulas.flatMap(({ path, name, doc, head }) => {
      const parameters = [...head.split(')')[0]?.matchAll(/(\w+)\s*:/g) ?? []].map(([, parameter]) => parameter ?? '');
      const documented = [...doc.matchAll(/@param (\w+)\s+[^\n]*\[[^\]]+\]/g)].map(([, parameter]) => parameter ?? '');
      const text = FILES.find((file) => file.path === path)?.text ?? '';
      return [
        ...(String(parameters) === String(documented) ? [] : [`${path}: ${name} takes ${parameters} but documents ${documented}`]),
        ...(/@returns[^\n]*\[[^\]]+\]/.test(doc) ? [] : [`${path}: ${name} has no unit behind @returns`]),
        ...(/Basis(: Basis)? = /.test(text) ? [] : [`${path}: no basis`]),
      ];
    });
    expect(faults).toEqual([]);
  });

  const examples = FUNCTIONS.flatMap(({ path, name, doc }) =>
    [...doc.matchAll(/@example\s+(\w+\([^\n]*\))\s*\/\/\s*(-?\d[\d._e+-]*)\s*$/gm)].map(([, call = '', value = '']) => ({ path, name, call, value })),
  );

  test('there are worked examples', () => {
    expect(examples.length).toBeGreaterThan(3);
  });

  test.each(examples)('$call is $value', async ({ path, name, call, value }) => {
    const module: Record<string, unknown> = await import(/* @vite-ignore */ join(ROOT, path));
    const run = new Function(...Object.keys(module), `return ${call};`) as (...names: unknown[]) => unknown;
    const answer = Number(run(...Object.values(module)));
    const digits = value.replace(/[-_.]|e.*$/g, '').replace(/^0+/, '').length;
    expect(Number(answer.toPrecision(Math.max(digits, 1))), name).toBeCloseTo(Number(value.replaceAll('_', '')), 12);
  });
});
