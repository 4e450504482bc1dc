/**
 * The take-offs of the demos reckoned by hand. Places are read off their drawings [in]; what a fitting takes off is its
 * centre-to-end less the thread that goes into it (A − e), typed here and nowhere taken from the program.
 */

/** Thread that shops let into a fitting [in], common practice. */
const ENGAGED = { '3/4': 9 / 16, '1': 11 / 16, '1-1/4': 11 / 16 } as const;
/** Outside diameter and wall of Schedule 40, ASME B36.10M [in]. */
export const SCHEDULE_40: Readonly<Record<keyof typeof ENGAGED, readonly [outside: number, wall: number]>> = { '3/4': [1.05, 0.113], '1': [1.315, 0.133], '1-1/4': [1.66, 0.14] };

/**
 * Centre-to-end [in]: straight elbows and tees of ASME B16.3 Class 300 (memory); reducing ones as the maker of the sample
 * unit gives them (invented). Named after the fitting and the leg that the pipe is on.
 */
const ENDS = {
  /** The regulator, a cap and a nozzle take nothing. */
  bare: ['3/4', 0],
  'elbow 3/4': ['3/4', 1.44],
  'tee 3/4': ['3/4', 1.44],
  'elbow 1': ['1', 1.63],
  'elbow 1-1/4': ['1-1/4', 1.94],
  'tee 1-1/4 × 1: run': ['1-1/4', 1.69],
  'tee 1-1/4 × 1: branch': ['1', 1.81],
  'tee 1 × 3/4: run': ['1', 1.5],
  'tee 1 × 3/4: branch': ['3/4', 1.56],
  'tee 1 × 3/4 × 3/4: large run': ['1', 1.5],
  'tee 1 × 3/4 × 3/4: small run': ['3/4', 1.5],
  'tee 1 × 3/4 × 3/4: branch': ['3/4', 1.56],
  'tee 3/4, branch 1: branch': ['1', 1.5],
  'tee 3/4, branch 1: run': ['3/4', 1.56],
  'elbow 1-1/4 × 1: large': ['1-1/4', 1.75],
  'elbow 1-1/4 × 1: small': ['1', 1.81],
  'elbow 1 × 3/4: large': ['1', 1.5],
  'elbow 1 × 3/4: small': ['3/4', 1.56],
} as const;
type End = keyof typeof ENDS;

/** A piece: ends numbered along the flow, size, inches between centres, what is at its ends. */
export type Hand = readonly [piece: string, size: keyof typeof ENGAGED, between_in: number, from: End, to: End];

const off_in = (end: End): number => (end === 'bare' ? 0 : ENDS[end][1] - ENGAGED[ENDS[end][0]]);
export const cutByHand_in = ([, , between_in, from, to]: Hand): number => between_in - off_in(from) - off_in(to);

/** Whether each end was typed with the size of its pipe. */
export const endsFit = ([, size, , from, to]: Hand): boolean => [from, to].every((end) => end === 'bare' || ENDS[end][0] === size);

/** Feet and inches [in]. */
const ft = (feet: number, inches = 0): number => feet * 12 + inches;

/** The whole of the signal hut, from its drawing: 14 in up from the regulator, 7'-3" north, 4'-0" east, the trap and the drop. */
export const F1_BY_HAND: readonly Hand[] = [
  ['1–2', '3/4', 14, 'bare', 'elbow 3/4'],
  ['2–3', '3/4', ft(7, 3), 'elbow 3/4', 'elbow 3/4'],
  ['3–4', '3/4', ft(4), 'elbow 3/4', 'tee 3/4'],
  ['4–5', '3/4', 4, 'tee 3/4', 'bare'],
  ['4–6', '3/4', 4, 'tee 3/4', 'bare'],
];

/** Heights of the annex: main 7'-10", top of the risers 9'-2", holes 8'-9"; pipe in the void −4", holes −7". */
const RISE = ft(9, 2) - ft(7, 10);
const DROP = ft(9, 2) - ft(8, 9);
const VOID_DROP = -4 - -7;
const TRAP = 4;

/** A trap straight on and a drop to the nozzle from a straight tee 3/4. */
const endOf = (tee: number, drop: number): Hand[] => [
  [`${tee}–${tee + 1}`, '3/4', TRAP, 'tee 3/4', 'bare'],
  [`${tee}–${tee + 2}`, '3/4', drop, 'tee 3/4', 'bare'],
];

export const F2_BY_HAND: readonly Hand[] = [
  // Outlet at x 30'-9", z 7'-0", up to the main and west to the tee of the void.
  ['1–2', '1-1/4', ft(7, 10) - ft(7), 'bare', 'elbow 1-1/4'],
  ['2–3', '1-1/4', ft(30, 9) - ft(29, 6), 'elbow 1-1/4', 'tee 1-1/4 × 1: run'],
  // Down into the void, west past U3 to U2 and U1.
  ['3–4', '1', ft(7, 10) + 4, 'tee 1-1/4 × 1: branch', 'elbow 1'],
  ['4–5', '1', ft(29, 6) - ft(23, 6), 'elbow 1', 'tee 1 × 3/4: run'],
  ['5–6', '3/4', ft(10) - ft(7, 6), 'tee 1 × 3/4: branch', 'tee 3/4'],
  ...endOf(6, VOID_DROP),
  ['5–9', '1', ft(23, 6) - ft(9, 9), 'tee 1 × 3/4: run', 'tee 1 × 3/4 × 3/4: large run'],
  ['9–10', '3/4', ft(19) - ft(10), 'tee 1 × 3/4 × 3/4: branch', 'tee 3/4'],
  ...endOf(10, VOID_DROP),
  ['9–13', '3/4', ft(9, 9) - ft(8), 'tee 1 × 3/4 × 3/4: small run', 'elbow 3/4'],
  ['13–14', '3/4', ft(10) - ft(6, 6), 'elbow 3/4', 'tee 3/4'],
  ...endOf(14, VOID_DROP),
  // The main to the east riser and N5.
  ['3–17', '1-1/4', ft(29, 6) - ft(26, 6), 'tee 1-1/4 × 1: run', 'tee 1-1/4 × 1: run'],
  ['17–18', '1', RISE, 'tee 1-1/4 × 1: branch', 'elbow 1 × 3/4: large'],
  ['18–19', '3/4', ft(10) - ft(7, 6), 'elbow 1 × 3/4: small', 'tee 3/4'],
  ...endOf(19, DROP),
  // To the middle riser, N4 and N3.
  ['17–22', '1-1/4', ft(26, 6) - ft(15, 6), 'tee 1-1/4 × 1: run', 'tee 1-1/4 × 1: run'],
  ['22–23', '1', RISE, 'tee 1-1/4 × 1: branch', 'tee 3/4, branch 1: branch'],
  ['23–24', '3/4', ft(19) - ft(10), 'tee 3/4, branch 1: run', 'tee 3/4'],
  ...endOf(24, DROP),
  ['23–27', '3/4', ft(10) - ft(6, 6), 'tee 3/4, branch 1: run', 'tee 3/4'],
  ...endOf(27, DROP),
  // To the west riser, N2 and N1.
  ['22–30', '1-1/4', ft(15, 6) - ft(5), 'tee 1-1/4 × 1: run', 'elbow 1-1/4 × 1: large'],
  ['30–31', '1', RISE, 'elbow 1-1/4 × 1: small', 'tee 3/4, branch 1: branch'],
  ['31–32', '3/4', ft(19) - ft(10), 'tee 3/4, branch 1: run', 'tee 3/4'],
  ...endOf(32, DROP),
  ['31–35', '3/4', ft(10) - ft(6, 6), 'tee 3/4, branch 1: run', 'tee 3/4'],
  ...endOf(35, DROP),
];

const RUN = 'tee 1 × 3/4: run';
/** Of a room of the ferry control: outlet z 6'-6", pipe z 8'-8", holes z 8'-4"; the route is square, past one nozzle or two. */
function roomByHand(acrossFromWall: number, toFirst: number, toSecond?: number): Hand[] {
  const trap = (tee: number, label: string): Hand => [`${tee}–${label}`, '1', TRAP, RUN, 'bare'];
  const drop = (tee: number, label: string): Hand => [`${tee}–${label}`, '3/4', ft(8, 8) - ft(8, 4), 'tee 1 × 3/4: branch', 'bare'];
  return [
    ['1–2', '1', ft(8, 8) - ft(6, 6), 'bare', 'elbow 1'],
    ['2–3', '1', acrossFromWall, 'elbow 1', 'elbow 1'],
    ['3–4', '1', toFirst, 'elbow 1', RUN],
    ...(toSecond === undefined ? [trap(4, '5'), drop(4, '6')] : ([drop(4, '5'), ['4–6', '1', toSecond, RUN, RUN], trap(6, '7'), drop(6, '8')] satisfies Hand[])),
  ];
}

/** Cylinders stand 9 in off the corridor wall: y 21'-9" in the north, 13'-3" in the south; nozzles at y 29'-0" and 7'-0". */
const NORTH = ft(29) - ft(21, 9);
const SOUTH = ft(13, 3) - ft(7);

/** By network; along x from the last cylinder to the first nozzle and on to the second. */
export const F3_BY_HAND: Readonly<Record<string, readonly Hand[]>> = {
  'Network 201': roomByHand(NORTH, ft(9, 9) - ft(3, 2)),
  'Network 202': roomByHand(NORTH, ft(24, 10.5) - ft(21, 6)),
  'Network 203': roomByHand(NORTH, ft(37, 6) - ft(34, 4), ft(52) - ft(37, 6)),
  'Network 204': roomByHand(SOUTH, ft(5, 7.5) - ft(1, 6)),
  'Network 205': roomByHand(SOUTH, ft(22, 9) - ft(14, 8)),
  'Network 206': roomByHand(SOUTH, ft(40, 6) - ft(38, 4), ft(53) - ft(40, 6)),
};

/** Fittings by hand: kind and sizes, of a tee the run and then the branch. Each turn, meeting and trap counted on the drawing. */
export const FITTINGS_BY_HAND: Readonly<Record<'F1' | 'F2' | 'F3', Readonly<Record<string, number>>>> = {
  F1: { 'elbow-90 3/4': 2, 'tee 3/4': 1, 'cap 3/4': 1 },
  F2: {
    // Over the outlet; under the void's drop; over U1's branch.
    'elbow-90 1-1/4': 1,
    'elbow-90 1': 1,
    'elbow-90 3/4': 1,
    // On the main at the void, east and middle; its west end turns up.
    'tee 1-1/4 1-1/4 1': 3,
    'elbow-90 1-1/4 1': 1,
    // Tops of the risers: east turns to N5, middle and west part to two nozzles each.
    'elbow-90 1 3/4': 1,
    'tee 3/4 3/4 1': 2,
    // In the void at U3, and where U2 and U1 part.
    'tee 1 1 3/4': 1,
    'tee 1 3/4 3/4': 1,
    // One tee and one trap before each of the eight nozzles.
    'tee 3/4': 8,
    'cap 3/4': 8,
  },
  // Two turns in each of six rooms, a tee at each of eight nozzles, a trap at the end of each network.
  F3: { 'elbow-90 1': 12, 'tee 1 1 3/4': 8, 'cap 1': 6 },
};
