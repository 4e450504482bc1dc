import type { PipeMove } from '../../store/state.ts';

/** What goes along with a place where pipes meet, in the user's words. */
export const PIPE_MOVE_WORDS: Readonly<Record<PipeMove, string>> = {
  stretch: 'Stretch: pipes stay square',
  move: 'Take along all that follows',
  alone: 'This place alone',
};
