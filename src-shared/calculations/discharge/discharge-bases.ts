import { churchillBasis } from '../formulas/friction.ts';
import { nitrogenBasis } from '../formulas/nitrogen.ts';
import { idealOrificeFlowBasis, realChokedFluxBasis } from '../formulas/orifice.ts';
import { wallHeatBasis } from '../formulas/cylinder-wall-heat.ts';
import type { Basis } from '../topic.ts';

const wholeBasis: Basis = {
  formula: 'quasi-steady: at each moment the pipe passes what its two ends ask for; steps of at most 2 % of the gas left, midpoint rule',
  source: 'common practice; mass and energy balances, any textbook of thermodynamics',
  caution:
    'An estimate for the layout, not a listed flow calculation: the manual of the unit and its listing govern. Not modelled: filling of the pipe and waves at the start, time that valves and the release take, liquid or frost in the pipe.',
};

const cylinderBasis: Basis = {
  formula: 'dm/dt = −ṁ/n; d(m·u)/dt = −ṁ·h/n + h_w·A·(T_w − T); m_s·c·dT_w/dt = −h_w·A·(T_w − T), c = 470 J/(kg·K); (ρ, u) → T, p',
  source: 'mass and energy balance of an open vessel; c of carbon steel, textbook, memory',
  caution:
    'All cylinders are alike and open at once. Adiabatic is the coldest case and isothermal the warmest; a real discharge lies between them. Losses in valve, hose and check valve are not counted unless they are entered as K of the first pipe. The run stops where the gas comes to 126.2 K, the end of its equation.',
};

const regulatorBasis: Basis = {
  formula: 'p₀ = min(p_set, p_cylinder); h₀ = h_cylinder',
  source: 'ideal regulator; throttling at constant enthalpy, any textbook of thermodynamics',
  caution: "An ideal regulator: it holds its set pressure whatever the flow and the cylinder's pressure, and then stands open without loss. Its own capacity, droop and lock-up are in its manual.",
};

const pipeBasis: Basis = {
  formula: 'ṁ² = A²·(p₁² − p₂²)/{Z·R·T·[f·L/D + ΣK + 2·ln(p₁/p₂)]}; chokes at the end where ṁ = A·p₂/√(Z·R·T), M = 1/√γ; Z at the mean pressure',
  source: 'isothermal gas flow, Rennels and Hudson, Pipe Flow; same form in the open library fluids',
  caution:
    'Two runs are the bounds: gas as cold as it was throttled passes most (peak flow, pressures, thrust), gas that the pipe has warmed to the filling temperature passes least (the time to 95 %). Gas that a pressed room pushes back is not modelled. Pressures are static, height is not counted, and tees are K of the pipe that leaves them.',
};

const nozzleBasis: Basis = {
  formula: `ṁ = [${idealOrificeFlowBasis.formula.split(';')[0]}; else not choked] times real over ideal choked flux`,
  source: `${idealOrificeFlowBasis.source}; ${realChokedFluxBasis.source}`,
  caution: 'C_d is taken from the profile. Real over ideal flux is tabulated, to 0.2 %; where a throat would come below 126.2 K that of warmer gas is taken.',
};

const roomBasis: Basis = {
  formula: 'dC/dt = (Q/V)·(1 − C), Q = ṁ·R·T_room/p_room; V·dp/dt = ṁ·R·T_room − p·C_d·A·√(2·Δp/ρ_mixture)',
  source: 'free efflux from a well mixed room as in ISO 14520-1 and NFPA 2001, memory; volume balance with orifice flow',
  caution:
    'Each space is mixed at once, and agent is at room temperature as soon as it is in. Cold agent fills less, so that the pressure comes out high at first. Spaces of an enclosure share one pressure but no gas. Vents open at once; wind and ventilation are not counted.',
};

/** What a discharge is worked out with, and what it leaves out: printed with every result. */
export const dischargeBases: readonly Basis[] = [wholeBasis, cylinderBasis, nitrogenBasis, wallHeatBasis, regulatorBasis, pipeBasis, churchillBasis, nozzleBasis, roomBasis];
