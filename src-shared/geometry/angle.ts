const TURN = 2 * Math.PI;

/** The same direction within [0, 2π) [rad]. */
export const normalAngle_rad = (angle_rad: number): number => {
  const turned = angle_rad % TURN;
  return turned < 0 ? turned + TURN : turned;
};

/** Least turn between two directions [rad], 0 … π. */
export const angleBetween_rad = (a_rad: number, b_rad: number): number => {
  const turn = normalAngle_rad(a_rad - b_rad);
  return Math.min(turn, TURN - turn);
};

/** Signed least turn that brings direction `from` onto `to` [rad], in (−π, π], counter-clockwise positive. */
export const turnTo_rad = (from_rad: number, to_rad: number): number => {
  const turn = normalAngle_rad(to_rad - from_rad);
  return turn > Math.PI ? turn - TURN : turn;
};

/** Least turn between two undirected axes [rad], 0 … π/2: 0 is parallel, π/2 is square. */
export const axisAngle_rad = (a_rad: number, b_rad: number): number => {
  const between = angleBetween_rad(a_rad, b_rad);
  return Math.min(between, Math.PI - between);
};
