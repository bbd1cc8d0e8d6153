// The course's notebooks as pages to read and use.
//
// A notebook whose metadata says `ropecalc: {kind: ...}` is a course page. While it is read,
// its code is hidden, it runs by itself (only if Jupyter trusts it), and nothing the reader does
// changes the file. The command "Show the code of this page" turns it back into a notebook.
//
// The page's state is on its element as `data-ropecalc`: preparing, ready, untrusted, failed.

import { nameWidgets } from './labels.js';

const KINDS = ['lesson', 'exercise', 'solution', 'start', 'paper'];
const SHOW_CODE = 'ropecalc:show-code';
const AFRESH = 'ropecalc:start-afresh';
const DIED = Symbol('the kernel died');
const KERNEL_PATIENCE = 60_000; // ms; a cold start on a slow machine takes about ten seconds

const SAY = {
  preparing: 'Preparing the page\u2026',
  ready: '',
  untrusted:
    'This page is not as the course delivered it, so it has not been started by itself. ' +
    'Run it only if you know who changed it.',
  newPaper:
    'The course has not yet looked at this paper, so it has not been started by itself. Open the ' +
    'start page, press \u201cLook again\u201d, then close this paper and open it again. If it says ' +
    'the same then, ask your instructor.',
  noKernel:
    'This page could not be started. Close its tab and open it again. If that does not help, ' +
    'stop the course in the window you started it from, and start it once more.',
  died: 'What computes this page has stopped. Start the page afresh; your answers are kept.',
  error:
    'A part of this page could not be worked out, and what follows it does not answer. Start the ' +
    'page afresh. If that does not help, tell your instructor the name of this page.'
};

/** The JupyterLab plugin; `lab` loads one of JupyterLab's modules, `stylesheet` is a URL. */
export async function coursePages(lab, stylesheet) {
  const [notebook, cells, application, apputils, mainmenu] = await Promise.all([
    lab('@jupyterlab/notebook'),
    lab('@jupyterlab/cells'),
    lab('@jupyterlab/application'),
    lab('@jupyterlab/apputils'),
    lab('@jupyterlab/mainmenu')
  ]);
  return {
    id: 'ropecalc-lab:course-pages',
    description: 'Shows the pages of the course without code and runs them when they open.',
    autoStart: true,
    requires: [notebook.INotebookTracker],
    optional: [apputils.ICommandPalette, mainmenu.IMainMenu, application.ILabShell],
    activate(app, tracker, palette, menu, shell) {
      addStylesheet(stylesheet);
      const pages = new WeakMap();
      const current = () => pages.get(tracker.currentWidget);
      const changed = () => app.commands.notifyCommandChanged();
      const open = path => app.commands.execute('docmanager:open', { path });

      async function adopt(panel) {
        panel.addClass('ropecalc-page'); // before the content arrives, so that no code flashes
        await panel.context.ready;
        if (panel.isDisposed) {
          return;
        }
        if (!KINDS.includes(panel.model.getMetadata('ropecalc')?.kind)) {
          panel.removeClass('ropecalc-page');
          return;
        }
        const page = new CoursePage(panel, cells.CodeCell, open);
        pages.set(panel, page);
        changed();
        await page.open();
      }

      app.commands.addCommand(SHOW_CODE, {
        label: 'Show the code of this page (for editors)',
        isEnabled: () => current()?.reading === true,
        execute: () => {
          current()?.showCode();
          changed();
        }
      });
      app.commands.addCommand(AFRESH, {
        label: 'Start this page afresh',
        isEnabled: () => current()?.reading === true,
        execute: () => current()?.startAfresh()
      });
      for (const command of [SHOW_CODE, AFRESH]) {
        palette?.addItem({ command, category: 'Course' });
      }
      menu?.viewMenu.addGroup([{ command: AFRESH }, { command: SHOW_CODE }], 0);
      tracker.currentChanged.connect(changed);
      tracker.widgetAdded.connect((_, panel) => void adopt(panel));
      tracker.forEach(panel => void adopt(panel));
      void app.restored.then(() => shell?.collapseLeft());
    }
  };
}

/** One course page that is open. */
class CoursePage {
  constructor(panel, CodeCell, open) {
    this.panel = panel;
    this.CodeCell = CodeCell;
    this.openPath = open;
    this.reading = true;
    this.running = false; // the cells are being run
    this.renewed = false; // the kernel is new and has run nothing
    this.giveUp = () => undefined;
    this.notice = new Notice();
  }

  get codeCells() {
    return this.panel.content.widgets.filter(cell => cell.model.type === 'code');
  }

  async open() {
    this.protect();
    this.notice.attach(this.panel.content.node);
    this.panel.sessionContext.statusChanged.connect(this.onKernelStatus, this);
    if (this.codeCells.every(cell => cell.model.trusted)) {
      await this.run();
    } else {
      const { kind } = this.panel.model.getMetadata('ropecalc');
      const words = kind === 'paper' ? SAY.newPaper : SAY.untrusted;
      this.show('untrusted', words, ['Run this page', () => this.run()]);
    }
  }

  /** Run every cell once, in order, without moving the page under the reader. */
  async run() {
    if (this.running) {
      return;
    }
    this.running = true;
    const { sessionContext } = this.panel;
    // What a kernel that died was asked is never answered, so its death ends the waiting, too.
    const death = new Promise(resolve => (this.giveUp = () => resolve(DIED)));
    this.show('preparing', SAY.preparing);
    this.codeCells.forEach(cell => cell.addClass('ropecalc-waiting'));
    try {
      const ready = await Promise.race([kernelReady(sessionContext), death]);
      if (ready === DIED) {
        return;
      }
      if (!ready) {
        this.fail(SAY.noKernel);
        return;
      }
      for (const cell of this.codeCells) {
        const answer = this.CodeCell.execute(cell, sessionContext);
        const reply = await Promise.race([answer, death]);
        if (reply === DIED) {
          return;
        }
        cell.removeClass('ropecalc-waiting');
        if (reply && reply.content.status !== 'ok') {
          this.fail(SAY.error);
          return;
        }
      }
      this.show('ready', SAY.ready);
    } catch (reason) {
      if (!this.panel.isDisposed) {
        console.warn('ropecalc-lab:', reason);
        this.fail(SAY.died);
      }
    } finally {
      this.running = false;
      this.codeCells.forEach(cell => cell.removeClass('ropecalc-waiting'));
    }
  }

  async startAfresh() {
    if (this.running) {
      return;
    }
    this.show('preparing', SAY.preparing);
    try {
      if (!this.renewed) {
        await this.panel.sessionContext.restartKernel();
      }
    } catch (reason) {
      console.warn('ropecalc-lab:', reason);
      this.fail(SAY.noKernel);
      return;
    }
    this.renewed = false;
    await this.run();
  }

  fail(sentence) {
    this.show('failed', sentence, ['Start this page afresh', () => this.startAfresh()]);
  }

  show(state, sentence, action) {
    if (this.panel.isDisposed || !this.reading) {
      return; // closed, or turned into a notebook while it was running
    }
    this.panel.node.dataset.ropecalc = state;
    this.notice.say(sentence, action);
  }

  onKernelStatus(_, status) {
    if (this.reading && (status === 'dead' || status === 'autorestarting')) {
      // In the second case a new kernel is on its way; a restart would only get in its way.
      this.renewed = status === 'autorestarting';
      this.giveUp();
      this.fail(SAY.died);
    }
  }

  /** Let nothing the reader does reach the file. */
  protect() {
    const { panel } = this;
    const { content, context, model, toolbar } = panel;
    toolbar.hide();
    for (const cell of content.widgets) {
      cell.model.setMetadata('editable', false);
      cell.model.setMetadata('deletable', false);
    }
    // Whatever the run writes into the page is thrown away: a page is never "unsaved". Not at
    // once but when all listeners have heard of the change, or they would hear of it last.
    this.keepClean = (_, change) => {
      if (change.name === 'dirty' && change.newValue) {
        queueMicrotask(() => this.reading && !model.isDisposed && (model.dirty = false));
      }
    };
    model.stateChanged.connect(this.keepClean);
    model.dirty = false;
    context.save = async () => undefined; // the save command does not ask whether it is dirty
    this.handlers = {
      dblclick: event => inOutput(event) || event.stopPropagation(), // opens a text for editing
      contextmenu: event => event.stopPropagation(), // offers to delete cells
      click: event => this.follow(event)
    };
    for (const [type, handler] of Object.entries(this.handlers)) {
      panel.node.addEventListener(type, handler, true);
    }
    // JupyterLab's own keys (it listens further up) would delete, cut, move or run cells.
    this.keys = event => {
      event.stopPropagation();
      if ((event.ctrlKey || event.metaKey) && event.key.toLowerCase() === 's') {
        event.preventDefault(); // the browser would offer to save its copy of the page
      }
    };
    content.node.addEventListener('keydown', this.keys);
    this.names = nameWidgets(content.node);
    panel.disposed.connect(() => this.names.disconnect());
  }

  /** Turn the page into an ordinary notebook, for whoever writes the course. */
  showCode() {
    const { panel } = this;
    this.reading = false;
    this.codeCells.forEach(cell => cell.removeClass('ropecalc-waiting'));
    delete panel.node.dataset.ropecalc;
    panel.removeClass('ropecalc-page');
    panel.toolbar.show();
    panel.content.node.removeEventListener('keydown', this.keys);
    for (const [type, handler] of Object.entries(this.handlers)) {
      panel.node.removeEventListener(type, handler, true);
    }
    for (const cell of panel.content.widgets) {
      cell.model.deleteMetadata('editable');
      cell.model.deleteMetadata('deletable');
    }
    panel.model.stateChanged.disconnect(this.keepClean);
    panel.model.dirty = false;
    delete panel.context.save;
    this.names.disconnect();
    this.notice.remove();
  }

  /** A link to another page inside an output opens here, as links in the text do. */
  follow(event) {
    const link = event.target.closest?.('.jp-OutputArea a[href]');
    const target = link?.getAttribute('href') ?? '';
    if (!/\.ipynb(#.*)?$/.test(target) || /^([a-z]+:|\/)/i.test(target)) {
      return;
    }
    event.preventDefault();
    event.stopPropagation();
    const { pathname } = new URL(target, `http://course/${encodeURI(this.panel.context.path)}`);
    void this.openPath(decodeURI(pathname.slice(1)));
  }
}

/** The line at the top of a page that says what goes on, and the button that goes with it. */
class Notice {
  constructor() {
    this.node = document.createElement('div');
    this.node.className = 'ropecalc-notice';
    this.node.setAttribute('role', 'status');
  }

  attach(content) {
    const scroller = content.querySelector('.jp-WindowedPanel-outer') ?? content;
    scroller.prepend(this.node);
  }

  say(sentence, action) {
    const text = document.createElement('span');
    text.textContent = sentence;
    this.node.replaceChildren(text);
    if (action) {
      const [label, perform] = action;
      const button = document.createElement('button');
      button.type = 'button';
      button.textContent = label;
      button.addEventListener('click', () => void perform());
      this.node.append(button);
    }
  }

  remove() {
    this.node.remove();
  }
}

/** Wait until the kernel is connected and idle; false if that does not come about. */
async function kernelReady(session) {
  const giveUp = Date.now() + KERNEL_PATIENCE;
  void session.ready.catch(() => undefined);
  while (Date.now() < giveUp) {
    const kernel = session.session?.kernel;
    // "idle" is said before the connection stands, so both are asked.
    if (kernel?.status === 'idle' && kernel.connectionStatus === 'connected') {
      return true;
    }
    const startFailed = session.isReady && !session.session;
    if (startFailed || kernel?.status === 'dead' || session.isDisposed) {
      return false;
    }
    await new Promise(resolve => setTimeout(resolve, 50));
  }
  return false;
}

function inOutput(event) {
  return event.target.closest?.('.jp-OutputArea') != null;
}

function addStylesheet(href) {
  const link = document.createElement('link');
  link.rel = 'stylesheet';
  link.href = href;
  document.head.append(link);
}
