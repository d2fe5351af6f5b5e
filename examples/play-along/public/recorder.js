// Hands on what the microphone gives, with the second of the audio clock at which it came.
class Recorder extends AudioWorkletProcessor {
  #kept = [];
  #from = 0;

  process([[channel] = []]) {
    if (channel === undefined) return true;
    if (this.#kept.length === 0) this.#from = currentTime;
    this.#kept.push(channel.slice());
    if (this.#kept.length < 16) return true;
    const samples = new Float32Array(this.#kept.length * channel.length);
    for (const [at, part] of this.#kept.entries()) samples.set(part, at * channel.length);
    this.port.postMessage({ from: this.#from, samples }, [samples.buffer]);
    this.#kept = [];
    return true;
  }
}

registerProcessor('recorder', Recorder);
