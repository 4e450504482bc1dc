import { describe, expect, test } from 'vitest';
import { parseXml } from '#shared/underlay/svg/parse-xml';
import { problemOf } from '../../../support/underlay.ts';

const parse = (text: string) => parseXml(text, () => undefined);

describe('documents', () => {
  test('elements, attributes, text, comments, character data', () => {
    const root = parse(`\ufeff<?xml version='1.0'?><!-- a < b --><!DOCTYPE svg PUBLIC "-//W3C//DTD SVG 1.1//EN" "http://example.invalid/svg.dtd">
      <svg a="1" b='x "y"'><g>one<t/>two</g><![CDATA[<raw>&amp;]]></svg>\n<!-- end -->`);
    expect(root.name).toBe('svg');
    expect([...root.attributes]).toEqual([['a', '1'], ['b', 'x "y"']]);
    expect(root.children).toMatchObject([{ name: 'g', children: ['one', { name: 't' }, 'two'] }, '<raw>&amp;']);
  });

  test('references to characters', () => {
    expect(parse('<a b="&lt;&#65;&#x42;&quot;">&amp;&gt;&#xE4;</a>')).toMatchObject({ children: ['&>ä'] });
    expect(parse('<a b="&lt;&#65;&#x42;&quot;"/>').attributes.get('b')).toBe('<AB"');
  });

  test.each([
    ['<a><b></a></b>', /“a” is closed where “b” is open/],
    ['<a b=1/>', /not quoted/],
    ['<a b="1" b="2"/>', /twice/],
    ['<a></a><b/>', /more than one/],
    ['<a>&nope;</a>', /not defined/],
    ['text<a/>', /outside/],
  ])('%s is damaged', (text, what) => {
    const problem = problemOf(() => parse(text));
    expect(problem.what).toMatch(what);
    expect(problem.where).toMatch(/line 1/);
  });

  test('a document cut anywhere is told to be cut', () => {
    const text = '<svg width="10"><!-- n --><g id="a"><![CDATA[x]]><path d="M0 0"/></g></svg>';
    for (let length = 0; length < text.length; length += 1) expect(problemOf(() => parse(text.slice(0, length))).what).toMatch(/ends in the middle|damaged/);
    expect(parse(text).name).toBe('svg');
  });
});

describe('attacks', () => {
  test('texts that unfold into each other', () => {
    const laughs = `<!DOCTYPE svg [<!ENTITY a "ha">${Array.from({ length: 9 }, (_, i) => `<!ENTITY ${'bcdefghij'[i]} "${`&${'abcdefghi'[i]};`.repeat(10)}">`).join('')}]><svg>&j;</svg>`;
    expect(problemOf(() => parse(laughs)).what).toMatch(/unfold/);
    expect(problemOf(() => parse('<!DOCTYPE svg [<!ENTITY % p SYSTEM "http://example.invalid/x">]><svg/>')).what).toMatch(/unfold/);
  });

  test('a text from another file is never fetched: its name stays as it is written', () => {
    expect(parse('<!DOCTYPE svg [<!ENTITY x SYSTEM "file:///etc/passwd">]><svg>&x;</svg>').children).toEqual(['&x;']);
  });

  test('groups in groups without end', () => expect(problemOf(() => parse('<g>'.repeat(100_000))).what).toMatch(/deep/));
});
