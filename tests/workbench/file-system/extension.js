const vscode = require('vscode');

const { FileChangeType, FileSystemError } = vscode;

const types = {
    created: FileChangeType.Created,
    changed: FileChangeType.Changed,
    deleted: FileChangeType.Deleted,
};

/** Gives the editor the folder that the workbench server serves. */
exports.activate = (context) => {
    const server = context.extensionUri.with({ path: '' }).toString(true).replace(/\/$/, '');
    // The one folder that is open carries its name on disk; the server knows only what is below it.
    const home = vscode.workspace.workspaceFolders[0].uri;
    const changed = new vscode.EventEmitter();

    const events = new EventSource(`${server}/changes`);
    events.onmessage = ({ data }) => {
        const told = JSON.parse(data);
        changed.fire(
            told.map(({ type, path }) => ({ type: types[type], uri: vscode.Uri.joinPath(home, path) })),
        );
    };

    const below = (uri) => {
        if (uri.path !== home.path && !uri.path.startsWith(`${home.path}/`))
            throw FileSystemError.FileNotFound(uri);
        return uri.path.slice(home.path.length).split('/').map(encodeURIComponent).join('/');
    };
    const ask = async (uri, query, init) => {
        const asked = `${server}/files${below(uri)}?${new URLSearchParams(query)}`;
        const answer = await fetch(asked, init).catch(() => {
            throw FileSystemError.Unavailable('The workbench server does not answer.');
        });
        if (answer.ok) return answer;
        const { fault, sentence } = await answer.json();
        throw fault === 'Unavailable' ? FileSystemError.Unavailable(sentence) : FileSystemError[fault](uri);
    };

    context.subscriptions.push(
        changed,
        { dispose: () => events.close() },
        vscode.workspace.registerFileSystemProvider(
            home.scheme,
            {
                onDidChangeFile: changed.event,
                // The server tells of every change below the folder, watched or not.
                watch: () => ({ dispose() {} }),
                stat: async (uri) => (await ask(uri, { as: 'stat' })).json(),
                readDirectory: async (uri) => (await ask(uri, { as: 'entries' })).json(),
                readFile: async (uri) => new Uint8Array(await (await ask(uri, {})).arrayBuffer()),
                writeFile: async (uri, content, { create, overwrite }) => {
                    await ask(uri, { create, overwrite }, { method: 'PUT', body: content });
                },
                createDirectory: async (uri) => {
                    await ask(uri, { make: 'folder' }, { method: 'POST' });
                },
                delete: async (uri, { recursive }) => {
                    await ask(uri, { recursive }, { method: 'DELETE' });
                },
                rename: async (from, to, { overwrite }) => {
                    await ask(from, { move: below(to), overwrite }, { method: 'POST' });
                },
            },
            { isCaseSensitive: true },
        ),
    );
};
