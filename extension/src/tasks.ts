import {
    type ExtensionContext,
    ProcessExecution,
    Task,
    type TaskDefinition,
    TaskGroup,
    TaskScope,
    tasks,
    type WorkspaceFolder,
    workspace,
} from 'vscode';

/** What a team may write in its `tasks.json`. */
interface CheckTask extends TaskDefinition {
    readonly type: 'layback';
    readonly paths?: readonly string[];
    readonly failOn?: 'error' | 'warning' | 'hint' | 'never';
}

/** Tasks that run `layback check` as the command line does, with the command that comes with the extension. */
export function provideTasks(context: ExtensionContext): void {
    const command = context.asAbsolutePath('dist/layback.mjs');
    const provider = tasks.registerTaskProvider('layback', {
        provideTasks: () =>
            onDisk(workspace.workspaceFolders ?? []).map((folder) =>
                taskFor({ type: 'layback', paths: ['.'] }, folder, command),
            ),
        resolveTask: ({ definition, scope }) =>
            taskFor(definition as CheckTask, scope as WorkspaceFolder | TaskScope, command),
    });
    context.subscriptions.push(provider);
}

/** The command reads a disk: of a folder that lies elsewhere it would find nothing, or another. */
export function onDisk<T extends Pick<WorkspaceFolder, 'uri'>>(folders: readonly T[]): T[] {
    return folders.filter(({ uri }) => uri.scheme === 'file');
}

function taskFor(
    definition: CheckTask,
    scope: WorkspaceFolder | TaskScope | undefined,
    command: string,
): Task {
    const cwd = typeof scope === 'object' ? scope.uri.fsPath : undefined;
    // The editor's own Node: a crew that writes plans need not have another one.
    const execution = new ProcessExecution(process.execPath, argumentsOf(definition, command), {
        ...(cwd !== undefined && { cwd }),
        env: { ELECTRON_RUN_AS_NODE: '1', NO_COLOR: '1' },
    });
    const task = new Task(
        definition,
        scope ?? TaskScope.Workspace,
        'check every plan',
        'layback',
        execution,
        ['$layback', '$layback-unread'],
    );
    task.group = TaskGroup.Build;
    task.detail = 'Says what is wrong with the plans of this folder, or could be better';
    return task;
}

export function argumentsOf({ paths = ['.'], failOn }: CheckTask, command: string): string[] {
    return [command, 'check', '--format', 'lines', ...(failOn ? ['--fail-on', failOn] : []), '--', ...paths];
}
