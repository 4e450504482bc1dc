import type { BasisOfDesign } from '#shared/model/basis-of-design';
import type { LengthSystem } from '#shared/units/length-text';
import { formatQuantity } from '#shared/units/quantity-text';
import { capitalised } from '../fields/capitalised.ts';
import { Choice } from '../fields/choice.tsx';
import { QuantityField, type QuantityFieldProps } from '../fields/quantity-field.tsx';
import type { BasisField as Field } from './basis-choices.ts';

/** Enough digits for every choice, and none that only the division by the scale brought in. */
const scaled = (value: number, scale = 1): number => Number((value / scale).toPrecision(10));

/** What a field holds under a basis of design, in words. */
export function fieldText(field: Field, basis: BasisOfDesign, { system }: { readonly system: LengthSystem }): string {
  if (field.kind === 'words') return field.words[basis[field.key]] ?? basis[field.key];
  if (field.kind === 'flag') return (basis[field.key] ? field.yes : field.no).toLowerCase();
  const value = basis[field.key];
  if (value === null) return field.blank ?? 'blank';
  return field.quantity === 'number' ? String(scaled(value, field.scale)) : formatQuantity(scaled(value, field.scale), field.quantity, system);
}

interface BasisFieldProps {
  readonly field: Field;
  readonly basis: BasisOfDesign;
  change(part: Partial<BasisOfDesign>): void;
}

/** One choice of the basis of design with what it decides. */
export function BasisField({ field, basis, change }: BasisFieldProps) {
  const { label, help } = field;
  if (field.kind === 'words') {
    const options = Object.entries(field.words).map(([value, words]) => ({ value, label: capitalised(words) }));
    return <Choice label={label} value={basis[field.key]} options={options} help={help} onCommit={(value) => change({ [field.key]: value })} wide />;
  }
  if (field.kind === 'flag') {
    const options = [
      { value: 'yes', label: field.yes },
      { value: 'no', label: field.no },
    ];
    return <Choice label={label} value={basis[field.key] ? 'yes' : 'no'} options={options} help={help} onCommit={(value) => change({ [field.key]: value === 'yes' })} wide />;
  }
  const { key, quantity, scale = 1, least, most, blank } = field;
  const value = basis[key];
  const props: QuantityFieldProps = {
    label,
    help,
    wide: true,
    value: value === null ? null : scaled(value, scale),
    least: scaled(least, scale),
    most: scaled(most, scale),
    onCommit: (taken) => change({ [key]: taken * scale }),
    ...(blank === undefined ? {} : { blank: { text: blank, commit: () => change({ [key]: null }) } }),
  };
  return <QuantityField {...props} kind={quantity} />;
}
