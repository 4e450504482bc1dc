import { type KeyboardEvent, type PointerEvent, useRef } from 'react';
import { normalAngle_rad } from '#shared/geometry/angle';
import { toDegrees } from '#shared/units/convert';

const SIZE = 244;
const MIDDLE = SIZE / 2;
const RIM = 82;
const DEGREE_rad = Math.PI / 180;

/** A range of directions, counter-clockwise from `from_rad` to `to_rad`. */
export interface Arc {
  readonly from_rad: number;
  readonly to_rad: number;
}

interface NozzleDialProps {
  readonly name: string;
  /** Directions of the holes as drawn [rad], the first one is the one that is turned by. */
  readonly holes_rad: readonly number[];
  /** Directions that the first hole may take; undefined while the limits for it are blank. */
  readonly legal: readonly Arc[] | undefined;
  /** The first hole is being turned to a direction. */
  onTurning(direction_rad: number): void;
  onTurned(direction_rad: number): void;
  onCancel(): void;
}

const at = (angle_rad: number, radius: number): { x: number; y: number } => ({ x: MIDDLE + Math.cos(angle_rad) * radius, y: MIDDLE - Math.sin(angle_rad) * radius });

/** Path of an arc on the dial; a whole turn is two halves. */
function arcPath({ from_rad, to_rad }: Arc, radius: number): string {
  const turn = to_rad - from_rad >= 2 * Math.PI - 1e-9 ? 2 * Math.PI : normalAngle_rad(to_rad - from_rad);
  const half = from_rad + turn / 2;
  const [a, b, c] = [at(from_rad, radius), at(half, radius), at(from_rad + turn, radius)];
  return `M${a.x} ${a.y}A${radius} ${radius} 0 0 0 ${b.x} ${b.y}A${radius} ${radius} 0 0 0 ${c.x} ${c.y}`;
}

const rounded = (angle_rad: number, step_deg: number): number => Math.round(angle_rad / DEGREE_rad / step_deg) * step_deg * DEGREE_rad;

/** A dial that turns a nozzle: a stroke for every hole, a band where the first hole may point. */
export function NozzleDial({ name, holes_rad, legal, onTurning, onTurned, onCancel }: NozzleDialProps) {
  const dial = useRef<HTMLDivElement>(null);
  const dragged = useRef<number | null>(null);
  const first = holes_rad[0] ?? 0;
  const degrees = Math.round(toDegrees(normalAngle_rad(first)) * 10) / 10;

  const directionOf = (event: PointerEvent): number => {
    const box = dial.current?.getBoundingClientRect();
    if (!box) return first;
    const pointed = Math.atan2(box.top + box.height / 2 - event.clientY, event.clientX - box.left - box.width / 2);
    return rounded(pointed, event.altKey ? 0.1 : event.shiftKey ? 15 : 1);
  };
  const onKeyDown = (event: KeyboardEvent): void => {
    if (event.key === 'Escape' && dragged.current !== null) {
      dragged.current = null;
      onCancel();
      event.stopPropagation();
      return;
    }
    const sign = event.key === 'ArrowLeft' || event.key === 'ArrowUp' ? 1 : event.key === 'ArrowRight' || event.key === 'ArrowDown' ? -1 : 0;
    if (sign === 0) return;
    event.preventDefault();
    event.stopPropagation();
    const step_deg = event.altKey ? 0.1 : event.shiftKey ? 15 : 1;
    onTurned(first + sign * step_deg * DEGREE_rad);
  };

  return (
    <div
      ref={dial}
      className="nozzle-dial"
      role="slider"
      tabIndex={0}
      aria-label={`Direction of the first hole of ${name}`}
      aria-valuemin={0}
      aria-valuemax={360}
      aria-valuenow={degrees}
      aria-valuetext={`${degrees} degrees`}
      onKeyDown={onKeyDown}
      onPointerDown={(event) => {
        event.currentTarget.setPointerCapture(event.pointerId);
        dragged.current = directionOf(event);
        onTurning(dragged.current);
      }}
      onPointerMove={(event) => {
        if (dragged.current === null) return;
        dragged.current = directionOf(event);
        onTurning(dragged.current);
      }}
      onPointerUp={() => {
        if (dragged.current !== null) onTurned(dragged.current);
        dragged.current = null;
      }}
      onPointerCancel={() => {
        dragged.current = null;
        onCancel();
      }}
    >
      <svg viewBox={`0 0 ${SIZE} ${SIZE}`} width="100%" height="100%" aria-hidden="true">
        <circle cx={MIDDLE} cy={MIDDLE} r={RIM} className="dial-rim" />
        {Array.from({ length: 72 }, (_, i) => {
          const angle = i * 5 * DEGREE_rad;
          const a = at(angle, RIM);
          const b = at(angle, RIM - (i % 18 === 0 ? 10 : i % 2 === 0 ? 6 : 3));
          return <line key={angle} x1={a.x} y1={a.y} x2={b.x} y2={b.y} className="dial-tick" />;
        })}
        {[0, 90, 180, 270].map((angle_deg) => {
          const place = at(angle_deg * DEGREE_rad, RIM + 24);
          return (
            <text key={angle_deg} x={place.x} y={place.y} className="dial-figure">
              {angle_deg}°
            </text>
          );
        })}
        {legal?.map((arc) => (
          <g key={`${arc.from_rad}-${arc.to_rad}`} className="dial-legal">
            <path d={arcPath(arc, RIM + 7)} />
            {[arc.from_rad, arc.to_rad].map((end) => {
              const [a, b] = [at(end, RIM + 2), at(end, RIM + 12)];
              return <line key={end} x1={a.x} y1={a.y} x2={b.x} y2={b.y} />;
            })}
          </g>
        ))}
        <circle cx={MIDDLE} cy={MIDDLE} r={14} className="dial-nozzle" />
        {holes_rad.map((hole, i) => {
          const [a, b] = [at(hole, 14), at(hole, i === 0 ? RIM - 2 : RIM - 26)];
          // biome-ignore lint/suspicious/noArrayIndexKey: holes have no other name than their number
          return <line key={i} x1={a.x} y1={a.y} x2={b.x} y2={b.y} className={i === 0 ? 'dial-hole is-first' : 'dial-hole'} />;
        })}
        {holes_rad.length > 0 ? <circle cx={at(first, RIM - 2).x} cy={at(first, RIM - 2).y} r={6} className="dial-grip" /> : null}
      </svg>
    </div>
  );
}
