import type { ReactiveController, ReactiveControllerHost } from 'lit';
import type { Theme } from '../../src/session/document';

const key = 'leadline-theme';

/** Keeps the theme of this browser: a preference of the machine, not of the session. */
export class ThemeController implements ReactiveController {
  private readonly host: ReactiveControllerHost;
  theme: Theme = 'system';

  constructor(host: ReactiveControllerHost) {
    this.host = host;
    host.addController(this);
  }

  hostConnected(): void {
    this.theme = readTheme();
    showTheme(this.theme);
  }

  choose(theme: Theme): void {
    this.theme = theme;
    showTheme(theme);
    try {
      localStorage.setItem(key, theme);
    } catch {
      // A browser that stores nothing still shows the theme until it is closed.
    }
    this.host.requestUpdate();
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
