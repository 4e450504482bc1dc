import type { AssemblyGap } from '../../derived/assembly-run.ts';
import type { Wording } from '../wording.ts';

/** What does not add up, as a sentence. */
export function gapText({ kind, before, cylinder, off_m }: AssemblyGap, names: Readonly<Record<string, { readonly name: string } | undefined>>, say: Pick<Wording, 'off'>): string {
  const whose = cylinder === null ? 'The rigid parts' : `The rigid parts of cylinder ${names[cylinder]?.name ?? ''}`;
  const where = before === 'pipe' ? 'where the pipe begins' : 'the manifold';
  if (kind === 'short') return `${whose} end ${say.off(off_m)} short of ${where}.`;
  if (kind === 'beyond') return `${whose} are ${say.off(off_m)} too long for their way to ${where}.`;
  return `The manifold is drawn ${say.off(Math.abs(off_m))} ${off_m > 0 ? 'longer' : 'shorter'} than it is listed.`;
}
