/** What must be seen at a hold point. Source: common practice; H10: NFPA 2001 annex C, memory. The manual of the unit governs. */
const CRITERIA: Readonly<Record<string, string>> = {
  H1: 'Sides, diagonals and ceiling at three places within the tolerances of the field sheet; obstacles as drawn, none added.',
  H2: 'Wall and anchors as on the sheet: kind, number, depth and torque. Nothing moves under load.',
  H3: 'Reamed, free of chips, oil and sealant; sealant on male threads, first two left clear; open ends capped.',
  H4: 'Kind and spacing as on the sheet, rigid where thrust acts, near every nozzle.',
  H5: 'Test pressure held as the form below says; gas from every hole.',
  H6: 'Measured from the datum faces, inside the allowed patch; tilt and hole directions inside what the sheet allows, after tightening.',
  H7: 'Every joint, support and penetration that will be covered can be told from a photograph with its place.',
  H8: 'Restraints as on the sheet and tight; outlet caps on until the cylinder is held and the hose is at hand; gauge in sight.',
  H9: 'Every reading of each circuit as the form below asks.',
  H10: 'Fan test both ways: agent is held as long as the basis of design asks, and no more pressure builds up than the weakest wall bears.',
  H11: 'Every row of the functional test, on mains and on battery.',
  H12: 'Every reading as the form below asks, then the actuator.',
};

/** What must be seen at a hold point: a sentence; blank for what is none. */
export const holdPointCriterion = (id: string): string => CRITERIA[id] ?? '';
