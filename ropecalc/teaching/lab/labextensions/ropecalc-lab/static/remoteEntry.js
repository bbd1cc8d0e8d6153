// What JupyterLab loads first. It keeps the contract of a federated extension (a container with
// `init` and `get`), written by hand so that the course needs no JavaScript build.
(() => {
  const name = 'ropecalc-lab';
  const folder = new URL('.', document.currentScript.src).href;
  let shared = {};

  // One of JupyterLab's own modules, as every other part of the page uses it.
  async function lab(module) {
    const versions = Object.values(shared[module] ?? {});
    const own = versions.find(({ from }) => from?.startsWith('@jupyterlab/application'));
    const found = own ?? versions[0];
    if (!found) {
      throw new Error(`${name}: this JupyterLab does not offer ${module}`);
    }
    return (await found.get())();
  }

  async function get(request) {
    if (request !== './extension') {
      throw new Error(`${name}: there is no ${request}`);
    }
    const { coursePages } = await import(`${folder}course_pages.js`);
    const plugin = await coursePages(lab, `${folder}course_pages.css`);
    return () => ({ __esModule: true, default: plugin });
  }

  window._JUPYTERLAB = window._JUPYTERLAB ?? {};
  window._JUPYTERLAB[name] = {
    init(scope) {
      shared = scope;
    },
    get
  };
})();
