-- Sessions that can be ended here, and the audit of sign-ins.

CREATE TABLE "SignIns" (
    "Id" INTEGER NOT NULL CONSTRAINT "PK_SignIns" PRIMARY KEY AUTOINCREMENT,
    "At" TEXT NOT NULL,
    "Name" TEXT NOT NULL,
    "From" TEXT NOT NULL,
    "Outcome" TEXT NOT NULL
);

CREATE TABLE "Sessions" (
    "Id" TEXT NOT NULL CONSTRAINT "PK_Sessions" PRIMARY KEY,
    "MemberId" TEXT NOT NULL,
    "Ticket" BLOB NOT NULL,
    "Until" INTEGER NOT NULL,
    CONSTRAINT "FK_Sessions_AspNetUsers_MemberId" FOREIGN KEY ("MemberId") REFERENCES "AspNetUsers" ("Id") ON DELETE CASCADE
);

CREATE INDEX "IX_Sessions_MemberId" ON "Sessions" ("MemberId");
