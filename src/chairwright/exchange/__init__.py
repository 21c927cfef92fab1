"""Files for other programs: tables, drawings and health records, in and out."""
