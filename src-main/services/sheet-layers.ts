import { type Mark, SHEET_LAYERS, type Sheet, type SheetLayer } from '#shared/sheets/sheet';

const LAYER_WORDS: Readonly<Record<SheetLayer, string>> = {
  underlay: 'Imported floor plan',
  coverage: 'Floor in sight of nozzles',
  building: 'Walls and what stands between them',
  pipe: 'Pipe and fittings',
  supports: 'Supports',
  cylinders: 'Cylinders and discharge assembly',
  nozzles: 'Nozzles and their jets',
  devices: 'Detectors, switches, alarms and wiring',
  dimensions: 'Dimensions',
  findings: 'Findings and revision clouds',
  notes: 'Notes and names',
};

/** What pdfkit keeps of an object; it knows no layers of its own. */
interface Reference {
  end(): void;
}
interface Innards {
  readonly page: { readonly resources: { readonly data: Record<string, unknown> } };
  readonly _root: { readonly data: Record<string, unknown> };
}

/** The layers of a document: optional content that viewers list, all of it shown until somebody hides it. */
export interface LayerPainter {
  /** Makes the layers known to the page that was just begun. */
  beginPage(): void;
  /** Operators that go over from one layer to another; undefined is what is always seen. */
  change(from: SheetLayer | undefined, to: SheetLayer | undefined): string;
}

const layersIn = (marks: readonly Mark[]): (SheetLayer | undefined)[] => marks.flatMap((mark) => (mark.kind === 'clip' ? [mark.layer, ...layersIn(mark.marks)] : [mark.layer]));

/** Gives a document the layers that its sheets use. */
export function layerPainter(document: PDFKit.PDFDocument, sheets: readonly Sheet[]): LayerPainter {
  const inside = document as unknown as Innards;
  const used = new Set(sheets.flatMap(({ marks }) => layersIn(marks)));
  const layers = SHEET_LAYERS.filter((layer) => used.has(layer));
  const groups = layers.map((layer) => {
    const group = document.ref({ Type: 'OCG', Name: Object(LAYER_WORDS[layer]) }) as unknown as Reference;
    group.end();
    return group;
  });
  // One configuration, named, in which every layer has its place: ISO 19005-3, 6.9.
  if (groups.length > 0) inside._root.data.OCProperties = { OCGs: groups, D: { Name: Object('Layers'), BaseState: 'ON', Order: groups } };
  const names = Object.fromEntries(layers.map((layer, i) => [`L${SHEET_LAYERS.indexOf(layer)}`, groups[i]]));
  return {
    beginPage() {
      if (groups.length > 0) inside.page.resources.data.Properties = names;
    },
    change: (from, to) => [...(from ? ['EMC'] : []), ...(to ? [`/OC /L${SHEET_LAYERS.indexOf(to)} BDC`] : [])].join('\n'),
  };
}
