import type { BatterySums } from '#shared/calculations/design/design';
import type { Worked } from '#shared/calculations/design/worked';
import type { Release } from '#shared/model/plan';
import { useFigures } from '../bench/use-plan.ts';
import { KnownChoice } from '../fields/choice.tsx';
import { QuantityField } from '../fields/quantity-field.tsx';
import { TextField } from '../fields/text-field.tsx';
import { batteryFigure, batteryWith } from './battery-with.ts';

const MOST_Ah = 10_000;
const MOST_A = 1000;

interface ReleasePanelProps {
  readonly release: Release;
  readonly battery: Worked<BatterySums> | undefined;
  onCommit(part: Partial<Release>): void;
}

/** Listing and battery of the panel that releases. */
export function ReleasePanel({ release, battery: sums, onCommit }: ReleasePanelProps) {
  const { quantity } = useFigures();
  const { panel, battery } = release;
  const setPanel = (part: Partial<Release['panel']>): void => onCommit({ panel: { ...panel, ...part } });
  const needs = sums?.isKnown ? `It takes ${quantity(sums.sums.needed_Ah, 'charge')}, with the reserve for its age.` : 'How long it must last is chosen in the basis of design.';
  const figure = (key: 'capacity_Ah' | 'standby_A' | 'alarm_A') => ({
    value: batteryFigure(battery, key),
    least: 0,
    blank: { text: 'not known', commit: () => onCommit({ battery: batteryWith(battery, key, null) }) },
    onCommit: (typed: number) => onCommit({ battery: batteryWith(battery, key, typed) }),
  });
  return (
    <>
      <h4>Listing of the panel</h4>
      <div className="fields">
        <KnownChoice label="Listed for releasing" value={panel.isListed} onCommit={(isListed) => setPanel({ isListed })} />
        <KnownChoice label="Listed with this solenoid" value={panel.isCompatible} onCommit={(isCompatible) => setPanel({ isCompatible })} />
        <TextField label="Which listing says so" value={panel.listing} placeholder="number or page" onCommit={(listing) => setPanel({ listing })} wide />
      </div>
      <h4>Battery of the panel</h4>
      <div className="fields">
        <QuantityField kind="charge" label="Battery" {...figure('capacity_Ah')} most={MOST_Ah} help={needs} wide />
        <QuantityField kind="current" label="Current while it stands by" {...figure('standby_A')} most={MOST_A} />
        <QuantityField kind="current" label="Current in alarm" {...figure('alarm_A')} most={MOST_A} />
      </div>
    </>
  );
}
