import type { EnclosureDesign } from '#shared/calculations/design/design';
import type { Evaluation } from '#shared/evaluate';
import { useStoreItself } from '../../store/use-store.ts';
import { Slip } from '../bench/slip.tsx';
import { useFigures } from '../bench/use-plan.ts';

/** What a room's agent comes to, in few words. */
function stateOf({ agent, supply }: EnclosureDesign): string {
  if (!agent.isKnown) return agent.because;
  if (!supply.isKnown) return supply.because;
  return supply.sums.installed_kg < agent.sums.massNeeded_kg ? 'too little agent' : '';
}

/** Every room with its first figures; pressing one shows all its sums. */
export function RoomsOverview({ evaluation: { design } }: { readonly evaluation: Evaluation }) {
  const store = useStoreItself();
  const { quantity } = useFigures();
  return (
    <Slip title="Room by room" part="rooms">
      <table className="sum-table">
        <thead>
          <tr>
            <th scope="col">Room</th>
            <th scope="col">Agent needed</th>
            <th scope="col">Installed</th>
            <th scope="col">Oxygen hot</th>
          </tr>
        </thead>
        <tbody>
          {design.enclosures.map((room) => (
            <tr key={room.ref.id}>
              <th scope="row">
                <button type="button" className="link" onClick={() => store.session({ selection: [room.ref], level: room.ref.level })}>
                  {room.name}
                </button>
                {stateOf(room) === '' ? null : <span className="quiet sum-note">{stateOf(room)}</span>}
              </th>
              <td>{room.agent.isKnown ? quantity(room.agent.sums.massNeeded_kg, 'mass') : '–'}</td>
              <td>{room.supply.isKnown ? quantity(room.supply.sums.installed_kg, 'mass') : '–'}</td>
              <td>{room.people.isKnown ? `${room.people.sums.hot.oxygenSeaLevel_pct.toFixed(2)} %` : '–'}</td>
            </tr>
          ))}
        </tbody>
      </table>
      <p className="quiet">Press a room for all its sums, or select one on the board.</p>
    </Slip>
  );
}
