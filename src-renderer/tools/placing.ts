import type { Command } from '#shared/commands/command';
import { distance_m } from '#shared/geometry/point';
import { commitOr } from './attempt.ts';
import type { PlacedWall } from './level-things.ts';
import type { Tool, ToolEvent, ToolView } from './tool.ts';
import { lengthText } from './typed-place.ts';

/** Where the pointer is, and where it was caught. */
type Pointed = Extract<ToolEvent, { kind: 'move' | 'down' | 'up' | 'double' }>;
/** What the field at the pointer was given. */
type TypedEvent = Extract<ToolEvent, { kind: 'typed' }>;

/** How a tool puts one thing after another where the pointer is. A sentence says why a thing cannot go there. */
interface Placing<S> extends Pick<Tool<S | null>, 'id' | 'hint' | 'sketch'> {
  /** Where the next one would go. */
  spotAt(view: ToolView, pointed: Pointed): S | null;
  /** Said when a click finds no spot. */
  readonly nowhere: string;
  /** The spot that typed values mean. */
  typedSpot(view: ToolView, spot: S | null, typed: TypedEvent): S | string;
  /** Puts it there. */
  put(view: ToolView, spot: S, typed: TypedEvent | null): Command | string;
}

/** Makes a tool that puts a thing with every click, with Enter where the pointer rests, or where typed values say; it goes on until it is left. */
export function placingTool<S>({ id, hint, sketch, spotAt, nowhere, typedSpot, put }: Placing<S>): Tool<S | null> {
  return {
    id,
    start: null,
    hint,
    sketch,
    step(spot, event, view) {
      const place = (here: S, stay: S | null, typed: TypedEvent | null = null) => {
        const command = put(view, here, typed);
        return typeof command === 'string' ? { state: stay, refusal: command } : commitOr(view, command, { state: stay }, stay);
      };
      switch (event.kind) {
        case 'cancel':
          return { state: null, finished: true };
        case 'move':
          return { state: spotAt(view, event) };
        case 'down': {
          const here = spotAt(view, event);
          return here ? place(here, here) : { state: here, refusal: nowhere };
        }
        case 'enter':
          return spot ? place(spot, spot) : { state: spot };
        case 'typed': {
          const there = typedSpot(view, spot, event);
          return typeof there === 'string' ? { state: spot, refusal: there } : place(there, spot, event);
        }
        default:
          return { state: spot };
      }
    },
  };
}

/**
 * Why a typed distance from the start of a wall cannot be; undefined when it can.
 * @param subject  begins the sentence: "The cylinder"
 * @param clear_m  must be free at both ends of the wall
 */
export function beyondWall(view: ToolView, { segment: { a, b } }: PlacedWall, along_m: number, clear_m: number, subject: string): string | undefined {
  const length_m = distance_m(a, b);
  return along_m < clear_m || along_m > length_m - clear_m ? `${subject} beyond the end of this wall, which is ${lengthText(view, length_m)} long.` : undefined;
}
