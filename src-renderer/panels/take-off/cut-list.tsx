import type { BillOfMaterials } from '#shared/take-off/bill-of-materials';
import { Slip } from '../bench/slip.tsx';
import { PieceLine } from './piece-line.tsx';

interface CutListProps {
  readonly bill: BillOfMaterials;
  /** Where pieces of several networks are listed. */
  readonly networkName: ((id: string) => string) | undefined;
}

/** Every piece to cut, network by network in the order of the isometric's numbers. */
export function CutList({ bill: { pieces }, networkName }: CutListProps) {
  const networks = [...new Set(pieces.map(({ network }) => network))];
  return (
    <Slip title="Cut list" part="cut-list">
      <p className="field-help">Named by the numbers of the isometric, along the flow. Press a piece to see it on the plan and to enter what was measured.</p>
      {networks.map((network) => (
        <div key={network}>
          {networkName ? <h4>{networkName(network)}</h4> : null}
          <ul className="pieces">
            {pieces
              .filter((piece) => piece.network === network)
              .map((piece) => (
                <PieceLine key={`${piece.from.label} ${piece.to.label}`} piece={piece} />
              ))}
          </ul>
        </div>
      ))}
    </Slip>
  );
}
