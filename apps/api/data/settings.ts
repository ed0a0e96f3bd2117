// What the service is started with.

export class Settings {
  readonly serviceUrl: string;
  readonly host: string;
  /** 0 for any free one. */
  readonly port: number;
  /** Folder of the built pages. */
  readonly pages: string;
  readonly logLevel: string;
  readonly version: string;

  constructor(given: Settings) {
    this.serviceUrl = given.serviceUrl;
    this.host = given.host;
    this.port = given.port;
    this.pages = given.pages;
    this.logLevel = given.logLevel;
    this.version = given.version;
  }
}
