import { strToU8, zipSync } from 'fflate';
import { type Plan, newPlan } from '#shared/model/plan';
import { printPlan } from '#shared/model/print-plan';
import { buildDemo } from '../../src-main/demos/build-demo.ts';
import { packWithAssets } from '../../src-main/services/plan-files.ts';

/** A file that somebody may try to open as a plan. */
export interface BadFile {
  readonly name: string;
  readonly bytes: Uint8Array;
}

const zipOf = (json: string, more: Record<string, Uint8Array> = {}): Uint8Array => zipSync({ 'plan.json': strToU8(json), ...more });
const bare = (change: (plan: Record<string, unknown>) => void): Uint8Array => {
  const plan: Record<string, unknown> = JSON.parse(printPlan(newPlan()));
  change(plan);
  return strToU8(JSON.stringify(plan));
};

/** The first demo with its first enclosure's corners in another order, so that its outline crosses itself. */
function crossed(plan: Plan): string {
  const copy: Plan = structuredClone(plan);
  const enclosure = Object.values(Object.values(copy.levels)[0]?.enclosures ?? {})[0];
  const [a, b, c, ...others] = enclosure?.outline ?? [];
  if (enclosure && a && b && c) enclosure.outline = [a, c, b, ...others];
  return printPlan(copy);
}

/** Files that are no sound plan, each bad in one way. */
export async function badPlanFiles(): Promise<BadFile[]> {
  const { plan, assets } = await buildDemo('F1');
  const good = (await packWithAssets(plan, async (sha256) => assets.find((asset) => asset.sha256 === sha256))).bytes;
  const text = printPlan(newPlan());
  return [
    { name: 'empty', bytes: new Uint8Array() },
    { name: 'one byte', bytes: Uint8Array.of(0x50) },
    { name: 'truncated by half', bytes: good.subarray(0, good.length >> 1) },
    { name: 'truncated by one byte', bytes: good.subarray(0, good.length - 1) },
    { name: 'truncated text', bytes: strToU8(text.slice(0, text.length >> 1)) },
    { name: 'not a plan', bytes: strToU8('The quick brown fox') },
    { name: 'picture', bytes: Uint8Array.of(0x89, 0x50, 0x4e, 0x47, 0x0d, 0x0a, 0x1a, 0x0a, 0, 0, 0, 0x0d) },
    { name: 'another archive', bytes: zipSync({ 'word/document.xml': strToU8('<x/>') }) },
    { name: 'another document', bytes: strToU8('{"format":"something-else","version":1}') },
    { name: 'list', bytes: strToU8('[]') },
    { name: 'wrong type', bytes: bare((each) => Object.assign(each, { levels: 'none' })) },
    { name: 'missing part', bytes: bare((each) => Reflect.deleteProperty(each, 'settings')) },
    { name: 'unknown part', bytes: bare((each) => Object.assign(each, { surprise: true })) },
    { name: 'future version', bytes: bare((each) => Object.assign(each, { version: 999 })) },
    { name: 'version that is no number', bytes: bare((each) => Object.assign(each, { version: 'latest' })) },
    { name: 'NaN', bytes: strToU8(text.replace(/"grid_m": [^,}\s]+/, '"grid_m": NaN')) },
    { name: 'infinite', bytes: strToU8(text.replace(/"grid_m": [^,}\s]+/, '"grid_m": 1e999')) },
    { name: 'proto key', bytes: strToU8(text.replace('"settings":', '"__proto__": {"polluted": true}, "settings":')) },
    { name: 'proto key deep', bytes: strToU8(text.replace('"info": {', '"info": {"__proto__": {"polluted": true},')) },
    { name: 'deep nesting', bytes: strToU8(`${'['.repeat(200_000)}${']'.repeat(200_000)}`) },
    { name: 'deep nesting unclosed', bytes: strToU8('{"a":'.repeat(100_000)) },
    { name: 'deep nesting in archive', bytes: zipOf('['.repeat(200_000)) },
    { name: 'outside entry', bytes: zipOf(text, { '../outside.txt': strToU8('x') }) },
    { name: 'outside entry deep', bytes: zipOf(text, { 'assets/../../outside.txt': strToU8('x') }) },
    { name: 'absolute entry', bytes: zipOf(text, { '/etc/outside': strToU8('x') }) },
    { name: 'zip bomb', bytes: zipOf(text, { 'assets/bomb': new Uint8Array(64 * 1024 * 1024) }) },
    { name: 'zip bomb plan', bytes: zipSync({ 'plan.json': new Uint8Array(64 * 1024 * 1024).fill(0x20) }) },
    { name: 'self-crossing outline', bytes: strToU8(crossed({ ...plan, assets: {} })) },
  ];
}
