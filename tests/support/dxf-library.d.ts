/** The part of the library `dxf` that the tests compare our reader with; it ships no types. */
declare module 'dxf' {
  export class Helper {
    constructor(contents: string);
    toPolylines(): { readonly polylines: readonly { readonly layer: { readonly name: string } | undefined; readonly vertices: readonly (readonly [number, number])[] }[] };
  }
  export const config: { verbose: boolean };
}
