import { useMemo, useState } from 'react';
import { armingOrder, findNextHoldPoint } from '#shared/site/arming-order';
import { presentEvaluation } from '../../store/selectors.ts';
import { useStore } from '../../store/use-store.ts';
import { Slip } from '../bench/slip.tsx';
import { HoldPointList } from './hold-point-list.tsx';
import { LogList } from './log-list.tsx';
import { NextHoldPoint } from './next-hold-point.tsx';
import { type SitePeople, lastPeople } from './site-people.tsx';

/** The hold points in the order that keeps people safe, the readings they stand on, and the log. */
export function ArmingSlip() {
  const evaluation = useStore(presentEvaluation);
  const order = useMemo(() => armingOrder(evaluation), [evaluation]);
  const [typed, setPeople] = useState<SitePeople | null>(null);
  const people = typed ?? lastPeople(evaluation.derived.plan);
  const next = findNextHoldPoint(order);
  const done = order.filter(({ standing }) => standing === 'done').length;
  return (
    <Slip title="Hold points and arming" part="arming" aside={<span className="quiet">{`${done} of ${order.length}`}</span>}>
      {next ? (
        <NextHoldPoint key={next.point.id} state={next} people={people} onPeople={setPeople} />
      ) : (
        <p>
          <strong>All hold points are done: the unit is armed.</strong> Whoever works in the room from now on locks the release out first.
        </p>
      )}
      <HoldPointList order={order} />
      <LogList people={people} />
    </Slip>
  );
}
