import { useEffect, useState } from 'react';
import type { AllowedPatch } from '#shared/margins/allowed-patch';
import { type MarginField, marginFields } from '#shared/margins/margin-field';
import type { MarginRule } from '#shared/margins/place-margin';
import type { Site } from '#shared/margins/site';

/** So much of the window's time is taken at once [ms]. */
const SLICE_ms = 6;

/** Margins over the space of a nozzle, coarse first and then finer, worked out between two frames; dropped when anything else is asked. */
export function useMarginField(site: Site | undefined, rule: MarginRule | null, patch: AllowedPatch | undefined): MarginField | null {
  const [field, show] = useState<MarginField | null>(null);
  const wanted = rule === 'all' ? patch : undefined;
  useEffect(() => {
    if (!site || !rule || (rule === 'all' && !wanted)) {
      show(null);
      return;
    }
    const fields = marginFields(site, rule, wanted);
    let timer: ReturnType<typeof setTimeout>;
    const slice = (): void => {
      const end = performance.now() + SLICE_ms;
      do {
        const { done, value } = fields.next();
        if (done) return;
        if (value) show(value);
      } while (performance.now() < end);
      timer = setTimeout(slice, 0);
    };
    timer = setTimeout(slice, 0);
    return () => clearTimeout(timer);
  }, [site, rule, wanted]);
  return field;
}
