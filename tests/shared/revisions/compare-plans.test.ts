import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import type { Command } from '#shared/commands/command';
import { addDevice } from '#shared/commands/add-device';
import { addNozzle } from '#shared/commands/add-nozzle';
import { deleteThings } from '#shared/commands/delete-things';
import { editBasis } from '#shared/commands/edit-basis';
import { editEnclosure } from '#shared/commands/edit-enclosure';
import { editInfo } from '#shared/commands/edit-info';
import { editLimit } from '#shared/commands/edit-limit';
import { editNozzle } from '#shared/commands/edit-nozzle';
import { editObstruction } from '#shared/commands/edit-obstruction';
import { editOpening } from '#shared/commands/edit-opening';
import { editPipe } from '#shared/commands/edit-pipe';
import { editWall } from '#shared/commands/edit-wall';
import { issueSet } from '#shared/commands/issue-set';
import { moveCorner } from '#shared/commands/move-corner';
import { moveNozzle } from '#shared/commands/move-nozzle';
import { moveThings } from '#shared/commands/move-things';
import type { Plan, Ref, RefKind, RefOf } from '#shared/model/plan';
import { printPlan } from '#shared/model/print-plan';
import { changedKeys, thingDigests } from '#shared/model/thing-digests';
import { changeDetails } from '#shared/revisions/change-words';
import { comparePlans } from '#shared/revisions/compare-plans';
import { Dice, MAKERS, refsOf, smallStart } from '../../support/random-commands.ts';
import { done } from '../../support/try-command.ts';
import '../../support/property-seed.ts';

const start = smallStart();
function the<K extends RefKind>(kind: K, plan: Plan = start): RefOf<K> {
  const found = refsOf(plan).find((ref): ref is RefOf<K> => ref.kind === kind);
  if (!found) throw new Error(`No ${kind}.`);
  return found;
}
const changedBy = (command: Command, plan: Plan = start): Plan => done(plan, command).next;
const told = (command: Command, plan: Plan = start): string[] => comparePlans(plan, changedBy(command, plan)).map((change) => [change.kind, change.name, ...changeDetails(change, 'metric')].join(' | '));
const all = (...refs: Ref[]): Ref[] => refs;

describe('what a command did is told in words', () => {
  test('a nozzle is moved: how far and which way, once', () => {
    const [line, ...more] = told(moveNozzle(the('nozzle'), { x: 2.3, y: 0.8, z: 2.3 }));
    // The joints of the pipe to it go along.
    expect(more.every((each) => each.startsWith('moved | Pipe joint | Moved 300 mm east'))).toBe(true);
    expect(line).toBe('moved | Nozzle N1 | Moved 300 mm east and 200 mm south');
  });
  test('straight up', () => expect(told(moveThings(all(the('device')), 0, 0.5))[0]).toContain('Moved 500 mm north'));
  test('a field is another', () => {
    expect(told(editEnclosure(the('enclosure'), { height_m: 3 }))).toEqual(['changed | Room 1 | Height: 2.700 m, now 3.000 m']);
    expect(told(editWall(the('wall'), { construction: 'stud-gypsum', loadBearing: false }))[0]).toMatch(/Wall 1: construction: .*, now stud gypsum \| Wall 1: load bearing: not entered, now no/);
    expect(told(editPipe(the('pipe'), { joint: 'welded' }))[0]).toContain('Joint: threaded, now welded');
    expect(told(editNozzle(the('nozzle'), { rotation_rad: Math.PI / 4 }))[0]).toContain('Turned by: 0.0°, now 45.0°');
    expect(told(editObstruction(the('obstruction'), { hasLooseItems: true }))[0]).toContain('Loose items: not entered, now yes');
  });
  test('an opening along its wall', () => expect(told(editOpening(the('opening'), { along_m: 2 }))[0]).toMatch(/^moved .*Along its wall: .* now 2.000 m/));
  test('one corner', () => expect(told(moveCorner(the('corner'), { x: -0.5, y: 0 }))).toContain('changed | Room 1 | Corner 1 moved 500 mm west'));
  test('a limit of the manual, with its unit', () => expect(told(editLimit('sample-80', 'nozzleToWall_m', { value: 0.25, source: 'page 4' }))[0]).toMatch(/Unit profile .* 250 mm/));
  test('what is said of the job', () => {
    expect(told(editInfo({ project: 'Annex' }))[0]).toContain('Project data | Project: ');
    expect(told(editBasis({ holdTime_s: 900 }))[0]).toContain('Basis of design | Hold time: 600.0 s, now 900.0 s');
  });
  test('come and gone', () => {
    expect(told(addDevice('level-0', 'sounder', { x: 1, y: 1 }, 2))).toEqual([expect.stringMatching(/^added \| Sounder/)]);
    expect(told(deleteThings(all(the('device'))))).toEqual([expect.stringMatching(/^removed \| detector/)]);
    expect(told(addNozzle(the('nozzle').network, { x: 1, y: 1, z: 2.3 }, [0], 'level-0'))).toEqual([expect.stringMatching(/^added \| Nozzle N2/)]);
  });
  test('a whole room with all its shafts went one way: no corner by itself', () => {
    const lines = told(moveThings(all(the('enclosure')), 1, 0));
    expect(lines).toContain('moved | Room 1 | Moved 1.000 m east');
  });
  test('a thing has its places on the plan, before and now', () => {
    const change = comparePlans(start, changedBy(moveNozzle(the('nozzle'), { x: 2.3, y: 1, z: 2.3 }))).find(({ ref }) => ref?.kind === 'nozzle');
    expect(change?.before).toEqual({ level: 'level-0', places: [{ x: 2, y: 1 }], isClosed: false });
    expect(change?.now?.places).toEqual([{ x: 2.3, y: 1 }]);
  });
  test('what a limit was taken from is told as it was written', () => {
    const [id = ''] = Object.keys(start.profiles);
    const [change] = comparePlans(start, changedBy(editLimit(id, 'nozzleToWall_m', { value: 0.4, source: 'Manual, page 12' })));
    expect(change?.fields.map(({ label, now }) => [label.split(': ').at(-1), now])).toEqual([
      ['value', '400 mm'],
      ['source', 'Manual, page 12'],
    ]);
  });
  test('two figures that print alike are written so finely that they differ', () => {
    const [change] = comparePlans(start, changedBy(editEnclosure(the('enclosure'), { height_m: 2.7000001 })));
    expect(change?.fields[0]?.before).not.toBe(change?.fields[0]?.now);
  });
});

/** The plan without what the log of issues tells, as text. */
const comparable = (plan: Plan): string => printPlan({ ...plan, nextSerial: 1, assets: {}, lastIssue: null, issuedSets: [], info: { ...plan.info, revisions: [] } });

describe('by random commands', () => {
  test('nothing that differs is left untold, and what is alike is not told', () => {
    fc.assert(
      fc.property(fc.array(fc.nat(), { minLength: 40, maxLength: 120 }), (numbers) => {
        const dice = new Dice(numbers);
        let before = start;
        for (let i = 0; i < 10; i += 1) {
          const outcome = dice.of(MAKERS)(before, dice)(before);
          if (!outcome.ok) continue;
          const now = outcome.next;
          const changes = comparePlans(before, now);
          expect(changes.length === 0, outcome.label).toBe(comparable(before) === comparable(now));
          const keys = new Set(changes.map(({ key }) => key));
          const things = changedKeys(thingDigests(before), thingDigests(now));
          // A pipe end may be told by its nozzle or pipe instead.
          for (const key of things) if (!key.startsWith('node/')) expect(keys, outcome.label).toContain(key);
          if (things.length > 0) expect(changes.some(({ ref }) => ref !== null), outcome.label).toBe(true);
          for (const change of changes) {
            expect(change.name.trim()).not.toBe('');
            if (change.kind === 'moved' || change.kind === 'changed') expect(changeDetails(change, 'metric').length).toBeGreaterThan(0);
            for (const { before: was, now: is } of change.fields) expect(is.trim() !== '' && was !== is, `${change.name}: ${JSON.stringify(change.fields)}`).toBe(true);
          }
          // The way back tells the same things, added for removed.
          const back = comparePlans(now, before);
          expect(back.map(({ key }) => key).sort()).toEqual(changes.map(({ key }) => key).sort());
          before = now;
        }
      }),
      { numRuns: 60 },
    );
  });

  test('issuing tells nothing by itself', () => {
    const issued = changedBy(issueSet({ mark: 'A', date: '2026-11-30', by: 'R. Vale', purpose: 'For approval' }, { sha256: 'a'.repeat(64), plan: null, sheets: null }));
    expect(comparePlans(start, issued)).toEqual([]);
    expect(comparePlans(start, JSON.parse(JSON.stringify(start)) as Plan)).toEqual([]);
  });
});
