import { editNozzle } from '#shared/commands/edit-nozzle';
import { moveNozzle } from '#shared/commands/move-nozzle';
import { setNozzleHeight } from '#shared/commands/set-nozzle-height';
import { turnNozzle } from '#shared/commands/turn-nozzle';
import type { DerivedNozzle } from '#shared/derived/derived';
import { normalAngle_rad } from '#shared/geometry/angle';
import type { PlanPoint3 } from '#shared/geometry/point';
import type { Nozzle, RefOf } from '#shared/model/plan';
import { faceName, findDatum, fromFace_m } from '#shared/derived/datum';
import { countOf } from '../../plan-words.ts';
import { selectEvaluation } from '../../store/selectors.ts';
import { useStore, useStoreItself } from '../../store/use-store.ts';
import { Choice } from '../fields/choice.tsx';
import { LengthField, QuantityField } from '../fields/quantity-field.tsx';
import { TextField } from '../fields/text-field.tsx';
import { TypedField } from '../fields/typed-field.tsx';
import { type Arc, NozzleDial } from './nozzle-dial.tsx';
import { OrificeSlip } from '../network/orifice-slip.tsx';
import { legalDirections } from './legal-directions.ts';
import { RoomSlip } from './room-slip.tsx';
import { Readings, Slip } from './slip.tsx';
import { useCommit, useFigures, useShownPlan } from './use-plan.ts';

/** Holes spread evenly over a turn. */
const evenHoles = (count: number): number[] => Array.from({ length: count }, (_, i) => (i * 2 * Math.PI) / count);

function arcsText(legal: readonly Arc[] | undefined, angle: (value_rad: number) => string): string {
  if (!legal) return 'Where holes may point is not checked: a limit of the unit profile is blank, or the nozzle hangs in no room.';
  if (legal.length === 0) return 'No direction is allowed here: move the nozzle.';
  if (legal.some(({ from_rad, to_rad }) => to_rad - from_rad >= 2 * Math.PI - 1e-9)) return 'Any direction is allowed here.';
  return `Allowed for this hole: ${legal.map(({ from_rad, to_rad }) => `${angle(normalAngle_rad(from_rad))} to ${angle(normalAngle_rad(to_rad))}`).join(', ')}.`;
}

function HolesSlip({ at, nozzle, derived }: { readonly at: RefOf<'nozzle'>; readonly nozzle: Nozzle; readonly derived: DerivedNozzle | undefined }) {
  const store = useStoreItself();
  const { quantity } = useFigures();
  const drawn = nozzle.holes_rad.map((hole) => hole + nozzle.rotation_rad);
  const base = nozzle.holes_rad[0] ?? 0;
  const turnTo = (direction_rad: number) => turnNozzle(at, normalAngle_rad(direction_rad - base));
  const legal = derived && legalDirections(derived);
  const angle = (value_rad: number): string => quantity(value_rad, 'angle');
  return (
    <Slip title="Where it blows" part="holes">
      <NozzleDial
        name={nozzle.name}
        holes_rad={drawn}
        legal={legal}
        onTurning={(direction_rad) => store.preview(turnTo(direction_rad))}
        onTurned={(direction_rad) => store.commit(turnTo(direction_rad))}
        onCancel={() => store.preview(null)}
      />
      <p className="field-help">{arcsText(legal, angle)}</p>
      <div className="fields">
        <QuantityField kind="angle" label="First hole points to" value={normalAngle_rad(drawn[0] ?? nozzle.rotation_rad)} onCommit={(direction_rad) => store.commit(turnTo(direction_rad))} help="0° is east, 90° is north." />
        <TypedField
          label="Number of holes"
          shown={String(nozzle.holes_rad.length)}
          read={(text) => (/^\s*\d{1,2}\s*$/.test(text) && Number(text) <= 36 ? { ok: true, value: Number(text) } : { ok: false, reason: 'Type a whole number up to 36, such as 4.' })}
          onCommit={(count) => store.commit(editNozzle(at, { holes_rad: evenHoles(count) }))}
          help="Spread evenly."
        />
      </div>
    </Slip>
  );
}

/** Place of the orifice: from the two faces that the sheets measure from, or from the plan's origin where there are none. */
function PlaceFields({ at, orifice, shape }: { readonly at: RefOf<'nozzle'>; readonly orifice: PlanPoint3; readonly shape: DerivedNozzle | undefined }) {
  const commit = useCommit();
  const { derived } = useStore(selectEvaluation);
  const space = shape?.space;
  const datum = space && findDatum(space, derived.nozzles.filter((nozzle) => nozzle.space?.key === space.key));
  const shift = (dx: number, dy: number): void => {
    commit(moveNozzle(at, { ...orifice, x: orifice.x + dx, y: orifice.y + dy }));
  };
  if (!datum) {
    return (
      <>
        <LengthField label="East of the origin" value={orifice.x} onCommit={(x) => shift(x - orifice.x, 0)} />
        <LengthField label="North of the origin" value={orifice.y} onCommit={(y) => shift(0, y - orifice.y)} />
      </>
    );
  }
  return datum.faces.map((face) => {
    const distance_m = fromFace_m(face, orifice);
    return (
      <LengthField
        key={face.ref.id}
        label={`From the ${faceName(face)}`}
        value={distance_m}
        onCommit={(wanted_m) => shift((wanted_m - distance_m) * Math.cos(face.inward_rad), (wanted_m - distance_m) * Math.sin(face.inward_rad))}
      />
    );
  });
}

const SPACE_WORDS = { room: '', 'under-floor': ', under the floor', 'ceiling-void': ', above the ceiling' } as const;

/** Form of a nozzle: place, height, holes, and what it serves. */
export function NozzleForm({ at }: { readonly at: RefOf<'nozzle'> }) {
  const commit = useCommit();
  const plan = useShownPlan();
  const { derived } = useStore(selectEvaluation);
  const { length } = useFigures();
  const network = plan.networks[at.network];
  const nozzle = network?.nozzles[at.id];
  if (!network || !nozzle) return null;
  const orifice = network.nodes[nozzle.node]?.at;
  const shape = derived.nozzles.find(({ ref }) => ref.network === at.network && ref.id === at.id);
  const path = shape?.network.paths.find((each) => each.nozzle === at.id);
  const change = (part: Partial<Nozzle>): void => {
    commit(editNozzle(at, part));
  };
  const spaces = derived.spaces.filter(({ level }) => level.id === network.level);
  const serves = nozzle.serves ? `${nozzle.serves.enclosure}/${nozzle.serves.space}` : '';
  return (
    <>
      <Slip title="Nozzle">
        <div className="fields">
          <TextField label="Name" value={nozzle.name} required="A nozzle needs a name: the fitter finds it by that." onCommit={(name) => change({ name })} />
          {orifice ? (
            <>
              <LengthField label="Orifice above floor" value={orifice.z} onCommit={(z_m) => commit(setNozzleHeight(at, z_m))} />
              <PlaceFields at={at} orifice={orifice} shape={shape} />
            </>
          ) : null}
          <QuantityField kind="angle" label="Tilt against straight down" value={nozzle.tilt_rad} least={0} most={Math.PI} onCommit={(tilt_rad) => change({ tilt_rad })} />
          <Choice
            label="Serves"
            value={serves}
            options={[
              { value: '', label: shape?.space && nozzle.serves === null ? `Where it hangs: ${shape.space.name}` : 'Where it hangs' },
              ...spaces.map((space) => ({ value: space.key, label: `${space.enclosure.name}${SPACE_WORDS[space.kind]}` })),
            ]}
            onCommit={(key) => {
              const space = spaces.find((each) => each.key === key);
              change({ serves: space ? { enclosure: space.enclosure.id, space: space.kind } : null });
            }}
            wide
          />
        </div>
        <Readings
          rows={[
            ...(shape?.localCeiling_m !== undefined && orifice ? [{ label: 'Below the ceiling here', value: length(shape.localCeiling_m - orifice.z) }] : []),
            ...(path
              ? [
                  { label: 'Pipe from the cylinder', value: length(path.length_m) },
                  { label: 'On that way', value: `${countOf(path.elbows, 'elbow')}, ${countOf(path.tees, 'tee')}` },
                ]
              : [{ label: 'Pipe from the cylinder', value: 'not joined' }]),
          ]}
        />
      </Slip>
      <OrificeSlip at={at} nozzle={nozzle} orifices={plan.profiles[network.profile]?.orifices ?? []} />
      <HolesSlip at={at} nozzle={nozzle} derived={shape} />
      {shape ? <RoomSlip derived={shape} /> : null}
    </>
  );
}
