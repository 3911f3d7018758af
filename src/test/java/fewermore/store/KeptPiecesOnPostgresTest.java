package fewermore.store;

@OnPostgres
class KeptPiecesOnPostgresTest extends KeptPiecesTest {}
