import { isTrouble, type Trouble } from '../../trouble';
import { openMicrophone } from './open-microphone';

/** Opens a microphone and closes it again, so that the browser tells the names of all devices. */
export async function askForMicrophone(): Promise<Trouble | null> {
  const microphone = await openMicrophone(null);
  if (isTrouble(microphone)) return microphone;
  microphone.close();
  return null;
}
