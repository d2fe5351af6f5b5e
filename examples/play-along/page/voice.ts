/** Lets a voice of the machine say a chord, if the browser has one that needs no network. */
export function speak(words: string): void {
  if (!('speechSynthesis' in window)) return;
  const voice = speechSynthesis.getVoices().find(({ localService }) => localService);
  if (voice === undefined) return;
  const said = new SpeechSynthesisUtterance(
    words.replaceAll('#', ' sharp').replaceAll('b', ' flat'),
  );
  said.voice = voice;
  said.rate = 1.4;
  speechSynthesis.cancel();
  speechSynthesis.speak(said);
}
