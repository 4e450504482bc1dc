type Call = (request: unknown) => Promise<unknown>;
type OnAction = (listener: (action: string) => void) => () => void;

/**
 * Builds what the window gets: one function a method, each tied to its name, and `onAction`.
 * Nothing in it takes a channel or a method name from the page.
 */
export function makeBridge(
  methods: readonly string[],
  call: (method: string, request: unknown) => Promise<unknown>,
  onAction: OnAction,
): Record<string, Call> & { onAction: OnAction } {
  const calls = Object.fromEntries(methods.map((method): [string, Call] => [method, (request) => call(method, request)]));
  return { ...calls, onAction } as Record<string, Call> & { onAction: OnAction };
}
