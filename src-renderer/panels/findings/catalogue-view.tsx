import { useState } from 'react';
import { LIMIT_CATALOGUE } from '#shared/profile/limit-catalogue';
import { CATALOGUE_PARTS, type CatalogueRow, catalogueOf, matchesCheck } from '#shared/rules/catalogue';
import { type Finding, VERDICTS } from '#shared/rules/finding';
import { RULES } from '#shared/rules/index';
import { VERDICT_WORDS, countOf, lengthSystem } from '../../plan-words.ts';
import { useStore } from '../../store/use-store.ts';
import { formatQuantity } from '#shared/units/quantity-text';
import { Slip } from '../bench/slip.tsx';
import { useShownPlan } from '../bench/use-plan.ts';
import { VerdictMark } from '../verdict-mark.tsx';

/** Limits that a check compares with: those of the manual, else the one that its findings name. */
function useLimitText(findings: readonly Finding[]): (row: CatalogueRow) => string {
  const plan = useShownPlan();
  const system = useStore(lengthSystem);
  const used = new Set(Object.values(plan.networks).map(({ profile }) => profile));
  const profiles = Object.values(plan.profiles).filter(({ id }) => used.size === 0 || used.has(id));
  const firstOf = new Map(findings.flatMap((finding) => (finding.limit === undefined ? [] : [[finding.rule, finding] as const])).reverse());
  return ({ id, limitKeys }) => {
    if (limitKeys.length > 0) {
      return limitKeys
        .map((key) => {
          const { label, kind } = LIMIT_CATALOGUE[key];
          const said = profiles.map(({ limits }) => {
            const limit = limits[key];
            return limit ? `${formatQuantity(limit.value, kind, system)} (${limit.source})` : 'blank';
          });
          return `${label}: ${[...new Set(said)].join('; ') || 'no unit profile'}`;
        })
        .join('. ');
    }
    const found = firstOf.get(id);
    return found?.limit === undefined ? '' : `${formatQuantity(found.limit, found.measure, system)}${found.limitSource ? ` (${found.limitSource})` : ''}`;
  };
}

function Counts({ counts }: Pick<CatalogueRow, 'counts'>) {
  return (
    <span className="catalogue-counts">
      {VERDICTS.filter((verdict) => counts[verdict] > 0).map((verdict) => (
        <span key={verdict} title={VERDICT_WORDS[verdict].many}>
          <VerdictMark verdict={verdict} /> {counts[verdict]}
        </span>
      ))}
      {counts.accepted > 0 ? <span className="quiet">{counts.accepted} accepted</span> : null}
    </span>
  );
}

/** Every check of the program: what is asked, against what, by which source, and how often in this plan. */
export function CatalogueView({ findings, onShow }: { readonly findings: readonly Finding[]; /** Shows the findings of one check. */ onShow(rule: string): void }) {
  const [words, setWords] = useState('');
  const limitText = useLimitText(findings);
  const rows = catalogueOf(RULES, findings);
  const shown = rows.filter((row) => matchesCheck(row, words));
  const asked = rows.filter(({ isAskedOfNothing }) => !isAskedOfNothing).length;
  return (
    <>
      <p>
        {rows.length} checks, of which {asked} found something in this plan to ask about. Press one to see what it says.
      </p>
      <div className="field is-wide">
        <label htmlFor="catalogue-words">Find a check</label>
        <input id="catalogue-words" type="search" value={words} placeholder="ceiling, NFPA, support…" onChange={(event) => setWords(event.target.value)} />
      </div>
      {shown.length === 0 ? <p className="quiet">No check has these words.</p> : null}
      {CATALOGUE_PARTS.map(({ letter, name }) => {
        const part = shown.filter((row) => row.part === letter);
        if (part.length === 0) return null;
        return (
          <Slip key={letter} title={name} aside={<span className="quiet">{countOf(part.length, 'check')}</span>}>
            <ul className="catalogue">
              {part.map((row) => {
                const limit = limitText(row);
                return (
                  <li key={row.id} data-check={row.id}>
                    <button type="button" className="catalogue-row" disabled={row.isAskedOfNothing} onClick={() => onShow(row.id)}>
                      <span className="catalogue-head">
                        <span className="catalogue-id">{row.id}</span>
                        <strong>{row.title}</strong>
                        {row.isAskedOfNothing ? <span className="quiet">asked of nothing yet</span> : <Counts counts={row.counts} />}
                      </span>
                      {limit ? <span>{limit}</span> : null}
                      <span className="quiet">
                        {row.basis.formula}. {row.basis.source}
                      </span>
                    </button>
                  </li>
                );
              })}
            </ul>
          </Slip>
        );
      })}
    </>
  );
}
