import type { Command } from '#shared/commands/command';
import { editDevice } from '#shared/commands/edit-device';
import { editSupport } from '#shared/commands/edit-support';
import { movePipeNode } from '#shared/commands/move-pipe-node';
import { setNozzleHeight } from '#shared/commands/set-nozzle-height';
import { setPipeHeight } from '#shared/commands/set-pipe-height';
import { type Ref, isSameRef } from '#shared/model/plan';
import type { SectionCut } from './section-cut.ts';
import { type HeightHandle, heightOfSupport } from './section-pick.ts';

/** The command that brings a thing of the section to a height above the finished floor [m]. */
export function heightCommand(handle: HeightHandle, z_m: number): Command {
  switch (handle.kind) {
    case 'nozzle':
      return setNozzleHeight(handle.ref, z_m);
    case 'node':
      return movePipeNode(handle.ref, { x: handle.place.x, y: handle.place.y, z: z_m });
    case 'pipe':
      return setPipeHeight([handle.ref], z_m);
    case 'device':
      return editDevice(handle.ref, { height_m: z_m });
    case 'support':
      return editSupport(handle.ref, { at: { x: handle.place.x, y: handle.place.y, z: z_m } });
  }
}

/** The selected thing whose height can be typed, or undefined. */
export function heightHandleOf(cut: SectionCut, selection: readonly Ref[]): HeightHandle | undefined {
  for (const ref of selection) {
    if (ref.kind === 'nozzle') {
      const found = cut.nozzles.find(({ nozzle }) => nozzle.ref.id === ref.id && nozzle.ref.network === ref.network);
      if (found) return { kind: 'nozzle', ref: found.nozzle.ref, z_m: found.at.z };
    } else if (ref.kind === 'support') {
      const found = cut.supports.find((support) => isSameRef(support.ref, ref));
      const handle = found && heightOfSupport(found);
      if (handle) return handle;
    } else if (ref.kind === 'device') {
      const found = cut.devices.find((device) => isSameRef(device.ref, ref));
      if (found) return { kind: 'device', ref: found.ref, z_m: found.at.z };
    } else if (ref.kind === 'node') {
      const found = cut.nodes.find((node) => node.ref.id === ref.id && node.ref.network === ref.network);
      if (found) return { kind: 'node', ref: found.ref, z_m: found.at.z, place: found.place };
    } else if (ref.kind === 'pipe') {
      const found = cut.pipes.find((pipe) => pipe.ref.id === ref.id && pipe.ref.network === ref.network);
      if (found) return { kind: 'pipe', ref: found.ref, z_m: found.a.z };
    }
  }
  return undefined;
}
