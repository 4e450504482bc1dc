/** Two places closer than this are one place [m]: a tenth of the finest site reading, far above float noise at 10 km. */
export const SAME_PLACE_m = 1e-6;

/** Slack given to a comparison of lengths so that float noise never turns a kept limit into a fault [m]. */
export const LENGTH_SLACK_m = 1e-9;

/** Slack given to a comparison of angles, same purpose [rad]. */
export const ANGLE_SLACK_rad = 1e-9;

/** Uncovered slivers smaller than this come from the grid of the polygon sums, not from the layout [m²]. */
export const SLIVER_m2 = 1e-4;
