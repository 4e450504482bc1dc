import { useStoreItself } from '../../store/use-store.ts';

/** Closes the dialog that is open. */
export function useCloseDialog(): () => void {
  const store = useStoreItself();
  return () => store.session({ dialog: null });
}
