import { URI } from 'langium';
import type { Press } from './press.ts';
import type { Fence, FenceWanted } from './protocol.ts';
import type { EditorSharedServices } from './services.ts';

/**
 * Plans that stand in another text, such as notes in Markdown. They are read as if they lay beside it, and use what the
 * workspace holds.
 */
export async function fenceAsked(
    { uri, text, press: folder }: FenceWanted,
    { workspace: { LangiumDocuments, WorkspaceManager } }: EditorSharedServices,
    press: Press,
): Promise<Fence> {
    await WorkspaceManager.ready;
    const around = URI.parse(uri);
    const at = around.with({ path: `${around.path || '/notes'}.fence.spread` }).toString();
    const { drawFence } = await press.fences(folder);
    return drawFence(text, at, (used) =>
        LangiumDocuments.getDocument(URI.parse(used))?.textDocument.getText(),
    );
}
