"""Tags of the bench's templates."""
