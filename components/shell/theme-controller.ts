import type { ReactiveController, ReactiveControllerHost } from 'lit';
import type { Theme } from '../../src/session/document';

const key = 'leadline-theme';
/** All that show the theme now: what one chooses holds for all. */
const shown = new Set<ThemeController>();

/** Keeps the theme of this browser: a preference of the machine, not of the session. */
export class ThemeController implements ReactiveController {
  private readonly host: ReactiveControllerHost;
  theme: Theme = 'system';

  constructor(host: ReactiveControllerHost) {
    this.host = host;
    host.addController(this);
  }

  hostConnected(): void {
    shown.add(this);
    this.theme = readTheme();
    showTheme(this.theme);
  }

  hostDisconnected(): void {
    shown.delete(this);
  }

  choose(theme: Theme): void {
    showTheme(theme);
    try {
      localStorage.setItem(key, theme);
    } catch {
      // A browser that stores nothing still shows the theme until it is closed.
    }
    for (const one of shown) {
      one.theme = theme;
      one.host.requestUpdate();
    }
  }
}

function readTheme(): Theme {
  try {
    const stored = localStorage.getItem(key);
    return stored === 'light' || stored === 'dark' ? stored : 'system';
  } catch {
    return 'system';
  }
}

function showTheme(theme: Theme): void {
  if (theme === 'system') delete document.documentElement.dataset['theme'];
  else document.documentElement.dataset['theme'] = theme;
}
