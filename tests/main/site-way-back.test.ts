import { PDFDocument } from '@cantoo/pdf-lib';
import { expect, test } from 'vitest';
import { addRevision } from '#shared/commands/add-revision';
import { approveSet } from '#shared/commands/approve-set';
import { issueSet } from '#shared/commands/issue-set';
import { recordMeasurements } from '#shared/commands/record-measurements';
import { derivePlan } from '#shared/derived/derive-plan';
import { type FieldDimension, fieldDimensionsOf } from '#shared/derived/field-dimensions';
import { packPlan } from '#shared/model/pack-plan';
import type { Plan } from '#shared/model/plan';
import { fieldNameOf } from '#shared/site/field-names';
import { judgeMeasurements } from '#shared/site/judge-measurements';
import { readEntries } from '#shared/site/read-entries';
import { formatLength } from '#shared/units/length-text';
import { sha256Of } from '../../src-main/services/asset-store.ts';
import type { LocalHost } from '../../src-main/services/local-host.ts';
import { goodOf, hostIn } from '../support/hosts.ts';
import { readPdf } from '../support/pdf-reading.ts';
import { tempFolder } from '../support/temp-folder.ts';
import { done } from '../support/try-command.ts';

const INCH_m = 0.0254;

async function finished(host: LocalHost, job: string): Promise<void> {
  for (;;) {
    const { state, problem } = goodOf(await host.jobState({ job }));
    if (state === 'done') return;
    if (state !== 'running') throw new Error(problem?.what ?? state);
    await new Promise((later) => setTimeout(later, 100));
  }
}

async function printed(host: LocalHost, plan: Plan, set: 'field' | 'submittal'): Promise<Uint8Array> {
  const { job } = goodOf(await host.printSheets({ plan, paper: 'auto', scale: 'auto', set, takeOff: null }));
  await finished(host, job);
  return goodOf(await host.printResult({ job })).bytes;
}

/** Fills a form as a tablet does: every dimension of the room, and two nozzles. */
async function filled(form: Uint8Array, values: ReadonlyMap<string, string>): Promise<Uint8Array> {
  const document = await PDFDocument.load(form);
  const fields = document.getForm();
  for (const [id, value] of values) {
    fields.getTextField(fieldNameOf(id, 'measured')).setText(value);
    fields.getTextField(fieldNameOf(id, 'by')).setText('R. Fenn');
  }
  return document.save();
}

test('a set is issued, the field sheet is filled in on a tablet and read back, judged, and printed as built; the approved set stays byte for byte', { timeout: 600_000 }, async () => {
  const host = hostIn(tempFolder());
  const { plan: drawn } = goodOf(await host.newPlan({ demo: 'F2', lengths: 'feet' }));

  const issuing = { mark: 'A', date: '2026-03-04', by: 'R. Vale', purpose: 'For approval' };
  const revised = done(drawn, addRevision({ mark: issuing.mark, date: issuing.date, text: issuing.purpose })).next;
  const { job } = goodOf(await host.keepIssue({ plan: revised, takeOff: null }));
  await finished(host, job);
  const kept = goodOf(await host.issueResult({ job }));
  const issued = done(drawn, issueSet(issuing, kept)).next;
  const approved = done(issued, approveSet(issued.issuedSets[0]?.id ?? '', { by: 'Authority', date: '2026-03-10', reference: '7' })).next;
  const approvedPlan = goodOf(await host.readIssue({ sha256: kept.plan.sha256 })).plan;
  const approvedBytes = sha256Of(packPlan(approvedPlan, {}));

  const derived = derivePlan(approved);
  const dimensions = fieldDimensionsOf(derived);
  const dimension = (test: (each: FieldDimension) => boolean): FieldDimension => {
    const found = dimensions.find(test);
    if (!found) throw new Error('Not on the field sheet.');
    return found;
  };
  const across = dimension(({ kind }) => kind === 'diagonal');
  const aside = dimension(({ name, part }) => name.startsWith('N1 ') && part === 'second');
  const low = dimension(({ name, part }) => name.startsWith('N5 ') && part === 'height');
  const off = new Map([
    [across.id, 6 * INCH_m],
    [aside.id, 2 * INCH_m],
    [low.id, -5 * INCH_m],
  ]);
  const values = new Map(dimensions.filter(({ id, kind }) => kind === 'wall' || kind === 'diagonal' || off.has(id)).map(({ id, planned_m }) => [id, formatLength(planned_m + (off.get(id) ?? 0), 'feet')]));
  const form = await filled(await printed(host, approved, 'field'), values);

  const reading = readEntries(goodOf(await host.readFieldRecord({ name: 'field.pdf', bytes: form })), derived);
  expect(reading.match).toBe('same');
  const taken = reading.rows.filter(({ kind }) => kind === 'taken');
  expect(new Set(taken.map(({ id }) => id))).toEqual(new Set(values.keys()));
  const entries = taken.flatMap(({ id, value_m, by }) => (value_m === null ? [] : [{ id, value_m, by }]));
  const built = done(approved, recordMeasurements(entries)).next;

  const { rows } = judgeMeasurements(built);
  const answerTo = ({ id }: FieldDimension) => rows.find((row) => row.dimension.id === id);
  expect(answerTo(across)).toMatchObject({ answer: 'does-not-close' });
  expect(answerTo(aside)).toMatchObject({ answer: 'inside' });
  expect(answerTo(low)).toMatchObject({ answer: 'breaks' });
  expect(answerTo(low)?.breaks.map(({ rule }) => rule)).toContain('N2');

  const pages = (await readPdf(await printed(host, built, 'submittal'))).map((page) => JSON.stringify(page));
  expect(pages.some((page) => /as.built/i.test(page))).toBe(true);
  expect(built.networks).toBe(approved.networks);
  expect(sha256Of(packPlan(goodOf(await host.readIssue({ sha256: kept.plan.sha256 })).plan, {}))).toBe(approvedBytes);
});
