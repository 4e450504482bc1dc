/** Volumes that a number of full cylinders fits. */
export interface FillBand {
  readonly least_m3: number;
  readonly greatest_m3: number;
}

export interface BandVerdict {
  readonly fits: boolean;
  readonly words: 'fits' | 'too little agent' | 'too little oxygen left' | 'fits no volume';
}

/** Noise of sums that round a volume by itself. */
const SUM_NOISE = 1e-9;

/** Whether a band holds a volume, and if not, why in words. */
export function bandVerdict(net_m3: number, { least_m3, greatest_m3 }: FillBand): BandVerdict {
  if (least_m3 > greatest_m3) return { fits: false, words: 'fits no volume' };
  if (net_m3 > greatest_m3 * (1 + SUM_NOISE)) return { fits: false, words: 'too little agent' };
  if (net_m3 < least_m3 * (1 - SUM_NOISE)) return { fits: false, words: 'too little oxygen left' };
  return { fits: true, words: 'fits' };
}
