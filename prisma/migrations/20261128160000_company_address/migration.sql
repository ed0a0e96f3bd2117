-- Where the company is reached, as its orders and letters print it.
ALTER TABLE company
  ADD COLUMN address text NOT NULL DEFAULT '',
  ADD COLUMN phone text NOT NULL DEFAULT '';
GRANT UPDATE (address, phone) ON company TO gauge_service;
