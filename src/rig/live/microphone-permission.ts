/** The standing of the microphone's permission; null in browsers that do not tell (Firefox). */
export async function microphonePermission(): Promise<PermissionStatus | null> {
  try {
    return await navigator.permissions.query({ name: 'microphone' });
  } catch {
    return null;
  }
}
