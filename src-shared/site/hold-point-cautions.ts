/** What may hurt somebody at a hold point. Source: common practice; the manual of the unit governs. */
const CAUTIONS: Readonly<Record<string, readonly string[]>> = {
  H2: ['Two persons lift. Nobody stands under what is being hung.'],
  H5: ['Nobody stays in the room during the test or a puff. Nitrogen has no smell: wear an oxygen meter.', 'Eye and ear protection. Pressure of the test only, never of a cylinder.'],
  H7: ['Close nothing in that has not been tested.'],
  H8: ['Never move a cylinder without its cap. Never stand in line with an outlet. Two persons and a trolley.'],
  H9: ['The actuator stays off its valve and the release locked out: only the dummy load is connected.'],
  H10: ['Tell everybody in the building: doors move, relief vents open.'],
  H11: ['The agent stays made safe: actuator off, release locked out. Shutdowns stop machines: ask who runs them.'],
  H12: ['Lock the release out while anybody works in the room. Terminals are proved dead before they are touched.', 'The actuator comes last. Wear an oxygen meter; leave the door open behind you.'],
};

/** Cautions of a hold point, most grave first; perhaps none. */
export const holdPointCautions = (id: string): readonly string[] => CAUTIONS[id] ?? [];
