import { archiveFile } from './archive-file.ts';
import { auditAnnotations } from './audit-annotations.ts';
import { auditAttachments } from './audit-attachments.ts';
import { auditColours } from './audit-colours.ts';
import { auditFonts } from './audit-fonts.ts';
import { auditFrame } from './audit-frame.ts';
import { auditMetadata } from './audit-metadata.ts';

/**
 * Looks at everything that ISO 19005-3 asks of a file of level B and that can be decided from the file alone. Shares
 * no code with the printing. The clauses, their numbers too, are from memory; no validator was at hand.
 * @returns what is wrong, each with its clause; empty where nothing was found
 */
export async function auditArchive(bytes: Uint8Array): Promise<string[]> {
  const file = await archiveFile(bytes);
  return [auditFrame, auditMetadata, auditFonts, auditColours, auditAnnotations, auditAttachments].flatMap((audit) => audit(file));
}
