/** Of the equation of state, not today's CODATA value: the coefficients were fitted with it. */
const GAS_CONSTANT_J_molK = 8.31451;
export const NITROGEN_MOLAR_MASS_kg_mol = 0.02801348;
/** R of nitrogen, R/M [J/(kg·K)]. */
export const NITROGEN_R_J_kgK = GAS_CONSTANT_J_molK / NITROGEN_MOLAR_MASS_kg_mol;
/** Where δ = 1 and τ = 1. */
export const NITROGEN_CRITICAL_kg_m3 = 11_183.9 * NITROGEN_MOLAR_MASS_kg_mol;
export const NITROGEN_CRITICAL_K = 126.192;

/** n, d, t, l of a term n·δ^d·τ^t·exp(−δ^l); no exponential when l is 0. */
export const NITROGEN_TERMS: readonly (readonly [n: number, d: number, t: number, l: number])[] = [
  [0.924803575275, 1, 0.25, 0], [-0.492448489428, 1, 0.875, 0], [0.661883336938, 2, 0.5, 0], [-1.92902649201, 2, 0.875, 0],
  [-0.0622469309629, 3, 0.375, 0], [0.349943957581, 3, 0.75, 0], [0.564857472498, 1, 0.5, 1], [-1.61720005987, 1, 0.75, 1],
  [-0.481395031883, 1, 2, 1], [0.421150636384, 3, 1.25, 1], [-0.0161962230825, 3, 3.5, 1], [0.172100994165, 4, 1, 1],
  [0.00735448924933, 6, 0.5, 1], [0.0168077305479, 6, 3, 1], [-0.00107626664179, 7, 0, 1], [-0.0137318088513, 7, 2.75, 1],
  [6.35466899859e-4, 8, 0.75, 1], [0.00304432279419, 8, 2.5, 1], [-0.0435762336045, 1, 4, 2], [-0.0723174889316, 2, 6, 2],
  [0.0389644315272, 3, 6, 2], [-0.021220136391, 4, 3, 2], [0.00408822981509, 5, 3, 2], [-5.51990017984e-5, 8, 6, 2],
  [-0.0462016716479, 4, 16, 3], [-0.00300311716011, 5, 11, 3], [0.0368825891208, 5, 15, 3], [-0.0025585684622, 8, 12, 3],
  [0.00896915264558, 3, 12, 4], [-0.0044151337035, 5, 7, 4], [0.00133722924858, 6, 4, 4], [2.64832491957e-4, 9, 16, 4],
];
/** n, d, t, η, β, γ of a term n·δ^d·τ^t·exp(−η(δ−1)² − β(τ−γ)²). */
export const NITROGEN_BELLS: readonly (readonly [n: number, d: number, t: number, eta: number, beta: number, gamma: number])[] = [
  [19.6688194015, 1, 0, 20, 325, 1.16], [-20.911560073, 1, 1, 20, 325, 1.16],
  [0.0167788306989, 3, 2, 15, 300, 1.13], [2627.67566274, 2, 3, 25, 275, 1.25],
];
/** Powers of τ and the vibration of the molecule in the ideal-gas part α⁰ = ln δ + ln·ln τ + Σ c·τ^power + v·ln(1 − exp(−θ·τ)). */
export const NITROGEN_IDEAL = {
  logarithm: 2.5,
  powers: [[-12.76952708, 0], [-0.00784163, 1], [-1.934819e-4, -1], [-1.247742e-5, -2], [6.678326e-8, -3]],
  vibration: 1.012941,
  theta: 26.65788,
} as const;
