"""What arrives: batches of entries, photos by resumable upload, job files. Each item has its own answer."""
