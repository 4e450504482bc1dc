import type { Derived } from '../derived/derived.ts';
import type { Finding } from '../rules/finding.ts';
import { formatQuantityAgainstLimit, formatQuantity } from '../units/quantity-text.ts';
import { planCrop } from './plan-crop.ts';
import { sectionCrop } from './section-crop.ts';
import type { WhyDrawing } from './why-drawing.ts';

/** Two heights farther apart than this are what was measured [m]. */
const UPRIGHT_m = 0.001;

/** Whether a finding measures heights rather than ways on the plan. */
function isAboutHeights({ place }: Finding): boolean {
  const heights = place?.heights ?? [];
  const [first] = heights;
  if (!place || !first || place.dimension !== undefined || (place.rays ?? []).length > 0) return false;
  return heights.some(({ z }) => Math.abs(z - first.z) > UPRIGHT_m);
}

/** What is written along the measuring line. */
function labelOf({ measure, measured, limit }: Finding, derived: Derived): string {
  if (measure !== 'length' || measured === undefined) return '';
  const { lengths } = derived.plan.settings;
  return limit === undefined ? formatQuantity(measured, measure, lengths) : formatQuantityAgainstLimit(measured, limit, measure, lengths).value;
}

/** The small drawing that shows best what a finding measured: from the side where heights decide, else from above; none where it has no place. */
export function drawWhy(finding: Finding, derived: Derived): WhyDrawing | undefined {
  const label = labelOf(finding, derived);
  return isAboutHeights(finding) ? sectionCrop(finding, derived, label) : planCrop(finding, derived, label);
}
