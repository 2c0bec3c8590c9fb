import { URI } from 'langium';
import type { Fence, FenceWanted } from './protocol.ts';
import type { EditorSharedServices } from './services.ts';

/**
 * Plans that stand in another text, such as notes in Markdown. They are read as if they lay beside it, and use what the
 * workspace holds.
 */
export async function fenceAsked(
    { uri, text }: FenceWanted,
    { workspace: { LangiumDocuments, WorkspaceManager }, editor: { Press } }: EditorSharedServices,
): Promise<Fence> {
    await WorkspaceManager.ready;
    const around = URI.parse(uri);
    const at = around.with({ path: `${around.path || '/notes'}.fence.spread` }).toString();
    const { drawFence } = await Press.fences();
    return drawFence(text, at, (used) =>
        LangiumDocuments.getDocument(URI.parse(used))?.textDocument.getText(),
    );
}
